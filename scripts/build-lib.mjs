import { existsSync, readdirSync, rmSync, statSync } from "node:fs";
import { join } from "node:path";
import { isNotTest, newestUnder } from "./freshness.mjs";
import { ROOT, runTool } from "./run.mjs";

const DIST = join(ROOT, "dist");
export const CLI_ENTRY = join(DIST, "cli/process.js");
export const SERVER_ENTRY = join(DIST, "server/index.js");

/**
 * Removes what an earlier build left of files that have gone since.
 * @param {string} folder
 * @param {number} before ms
 */
function prune(folder, before) {
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const path = join(folder, entry.name);
    if (path === join(DIST, "web")) continue;
    if (entry.isDirectory()) prune(path, before);
    else if (statSync(path).mtimeMs < before) rmSync(path);
  }
}

/**
 * Compiles library and command line into dist/, beside the planner in dist/web.
 * Written over the old build, so that a command that runs meanwhile still finds its files.
 * @returns {boolean} whether the types were sound too
 */
export function buildLib() {
  // File times can be coarser than the clock.
  const start = Date.now() - 2000;
  const sound = runTool("tsc", ["-p", "tsconfig.build.json"]);
  if (existsSync(DIST)) prune(DIST, start);
  return sound;
}

/** Compiles the library where its sources are newer. Ends the program when that fails. */
export function ensureLib() {
  const newest = newestUnder(join(ROOT, "src"), (name) => name !== "web" && isNotTest(name));
  if (newest <= newestUnder(SERVER_ENTRY)) return;
  console.error("Building the workroom …");
  if (buildLib()) return;
  console.error("The workroom could not be built; see the message above.");
  process.exit(1);
}

if (process.argv[1] === import.meta.filename) process.exit(buildLib() ? 0 : 1);
