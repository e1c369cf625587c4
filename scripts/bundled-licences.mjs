import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { ROOT } from "./run.mjs";

/**
 * The package that a file of the build comes from; undefined where it is our own.
 * @param {string} path
 */
export function packageOf(path) {
  return /.*\/node_modules\/((?:@[^/]+\/)?[^/@\0?]+)/.exec(path.replaceAll("\\", "/"))?.[1];
}

/**
 * Names, licences and licence texts of packages, as one text to ship with what they are built into.
 * @param {Iterable<string>} names
 * @returns {string}
 */
export function licencesText(names) {
  return [...names]
    .sort()
    .map(entry)
    .join(`\n${"-".repeat(80)}\n\n`);
}

/** @param {string} name */
function entry(name) {
  const folder = join(ROOT, "node_modules", name);
  const { version, license, homepage } = JSON.parse(readFileSync(join(folder, "package.json"), "utf8"));
  const file = readdirSync(folder).find((one) => /^(?:licen[cs]e|copying)(?:\.|$|-)/i.test(one));
  if (file === undefined && license === undefined) throw new Error(`${name} names no licence`);
  const text = file === undefined ? `Licensed under ${license}.` : readFileSync(join(folder, file), "utf8");
  const head = [`${name} ${version}`, license, homepage].filter((line) => line !== undefined);
  return `${head.join("\n")}\n\n${text.trim()}\n`;
}
