import { readFileSync } from "node:fs";
import { join } from "node:path";
import { ROOT, run } from "./run.mjs";

/**
 * @typedef {{ version?: string, optional?: boolean, peer?: boolean, link?: boolean }} Locked
 * @typedef {{ packages: Record<string, Locked> }} Lock
 */

/**
 * @param {string} file
 * @returns {Lock | undefined}
 */
function readLock(file) {
  try {
    return JSON.parse(readFileSync(join(ROOT, file), "utf8"));
  } catch {
    return undefined;
  }
}

/** Whether every package of the lock file stands in node_modules at its locked version. */
export function isInstalled() {
  const wanted = readLock("package-lock.json");
  const present = readLock("node_modules/.package-lock.json");
  if (!wanted || !present) return false;
  return Object.entries(wanted.packages).every(
    ([path, locked]) => path === "" || locked.optional || present.packages[path]?.version === locked.version,
  );
}

/** Installs what the lock file names, where it is not there yet. Ends the program when that fails. */
export function ensureInstalled() {
  if (isInstalled()) return;
  console.error("Installing packages (npm ci) …");
  if (run("npm", ["ci", "--no-audit", "--no-fund"])) return;
  console.error("The packages could not be installed; see npm's message above. A network is needed once.");
  process.exit(1);
}
