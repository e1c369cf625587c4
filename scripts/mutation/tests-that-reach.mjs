import { existsSync, readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative } from "node:path";

/** Tests of the screens need a browser's document, and those of whole pictures and processes take too long to say much. */
const LEFT_OUT =
  /^(?:src\/web|test\/(?:e2e|rooms|cli|hostile|gallery|workbook|fuzz|printed|drawing|workroom)|src\/(?:server|cli|workbook|drawing|workroom))\//;
/** They read the source tree, not what it computes. */
const OF_THE_TREE =
  /^test\/(?:layers|import-circles|exported-names|throws|citations|schema|web-server|tally|dependencies)\.test\.ts$/;

/**
 * The tests of the core that import some files, themselves or by way of others.
 * @param {string} root of the project
 * @param {readonly string[]} files their paths below it
 * @returns {string[]}
 */
export function testsThatReach(root, files) {
  const all = ["src", "test"].flatMap((folder) =>
    readdirSync(join(root, folder), { recursive: true, encoding: "utf8" })
      .filter((path) => path.endsWith(".ts"))
      .map((path) => join(folder, path)),
  );
  /** @type {Map<string, string[]>} */
  const importers = new Map();
  for (const path of all) {
    for (const [, given = ""] of readFileSync(join(root, path), "utf8").matchAll(
      /from "(\.{1,2}\/[^"]+)"/g,
    )) {
      const target = relative(root, join(root, dirname(path), given));
      if (existsSync(join(root, target))) importers.set(target, [...(importers.get(target) ?? []), path]);
    }
  }
  const reached = new Set(files);
  for (const path of reached) for (const importer of importers.get(path) ?? []) reached.add(importer);
  return [...reached]
    .filter((path) => path.endsWith(".test.ts") && !LEFT_OUT.test(path) && !OF_THE_TREE.test(path))
    .sort();
}
