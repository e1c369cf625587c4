import { buildLib, CLI_ENTRY } from "../../scripts/build-lib.mjs";
import { newestUnder } from "../../scripts/freshness.mjs";

/** The command line is tested as it is shipped: compiled. */
export function setup(): void {
  if (newestUnder("src") > newestUnder(CLI_ENTRY)) buildLib();
}
