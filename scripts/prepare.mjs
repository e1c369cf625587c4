// Runs after `npm ci` and before `npm pack`: makes `npx shadewright` work in a checkout.
import { existsSync } from "node:fs";
import { join } from "node:path";
import { buildLib, CLI_ENTRY } from "./build-lib.mjs";
import { newestUnder } from "./freshness.mjs";
import { ROOT } from "./run.mjs";

if (!existsSync(join(ROOT, "node_modules/typescript"))) {
  // Installed without the tools that build it.
  console.error("The command line is not built: TypeScript is not installed.");
} else if (!existsSync(CLI_ENTRY) || newestUnder(join(ROOT, "src")) > newestUnder(CLI_ENTRY)) {
  const sound = buildLib();
  if (!existsSync(CLI_ENTRY)) process.exit(1);
  if (!sound) console.error("The command line is built, but its types do not check: run `npm run types`.");
}
