import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

/**
 * Cases on which a property failed once, for its `examples`: they are tried at every run, before any drawn ones.
 * `npm run explore` writes them. `url` is the test file's `import.meta.url`, `test` the property's full name.
 */
export function pinned<Case extends unknown[]>(url: string, test: string): Case[] {
  const path = fileURLToPath(url).replace(/\.test\.tsx?$/, ".pinned.json");
  if (!existsSync(path)) return [];
  const cases = JSON.parse(readFileSync(path, "utf8")) as Record<string, Case[]>;
  return cases[test] ?? [];
}
