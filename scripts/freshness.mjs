import { readdirSync, statSync } from "node:fs";
import { join } from "node:path";

/**
 * Time of the last change under a file or folder, ms; 0 where there is none.
 * @param {string} path
 * @param {(name: string) => boolean} [counts] which files and folders count
 * @returns {number}
 */
export function newestUnder(path, counts = () => true) {
  const stat = statSync(path, { throwIfNoEntry: false });
  if (!stat) return 0;
  if (!stat.isDirectory()) return stat.mtimeMs;
  return readdirSync(path)
    .filter(counts)
    .reduce((newest, name) => Math.max(newest, newestUnder(join(path, name), counts)), 0);
}

/** @param {string} name */
export function isNotTest(name) {
  return !/\.test\.tsx?$/.test(name);
}
