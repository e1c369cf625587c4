import { newestUnder } from "../../scripts/freshness.mjs";
import { buildLib, CLI_ENTRY } from "../../scripts/build-lib.mjs";

/** The command line is tested as it is shipped: compiled. */
export default function setup(): void {
  if (newestUnder("src") > newestUnder(CLI_ENTRY)) buildLib();
}
