import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, relative } from "node:path";
import { parseArgs } from "node:util";
import { ROOT, runTool } from "./run.mjs";

/**
 * Draws other cases for the properties than the usual ones: `npm run explore -- --runs 20 test/plan`. Each run has a
 * seed of its own. A case that fails is pinned beside its property, in `<test file>.pinned.json`, from where `pinned`
 * hands it to every run that follows.
 */
const { values, positionals } = parseArgs({
  options: {
    runs: { type: "string", default: "10" },
    seed: { type: "string", default: String(Date.now() % 1_000_000_007) },
  },
  allowPositionals: true,
});

/**
 * One property that failed: its file, its full name, and the smallest case.
 * @typedef {{ testPath: string, test: string, seed: number, counterexample: unknown[] }} Find
 */

/**
 * @param {Find} find
 * @returns {boolean} whether it is a new one that JSON can hold
 */
function pin({ testPath, test, counterexample }) {
  const path = testPath.replace(/\.test\.tsx?$/, ".pinned.json");
  const cases = existsSync(path) ? JSON.parse(readFileSync(path, "utf8")) : {};
  cases[test] ??= [];
  const texts = cases[test].map((/** @type {unknown} */ one) => JSON.stringify(one));
  if (texts.includes(JSON.stringify(counterexample))) return false;
  cases[test].push(counterexample);
  writeFileSync(path, `${JSON.stringify(cases, null, 2)}\n`);
  return true;
}

const folder = mkdtempSync(join(tmpdir(), "shadewright-explore-"));
const finds = join(folder, "finds.jsonl");
let failed = 0;
for (let run = 0; run < Number(values.runs); run++) {
  const seed = String(Number(values.seed) + run);
  console.log(`\n— seed ${seed}`);
  const args = ["run", "--project", "unit", "--reporter=dot", ...positionals];
  if (!runTool("vitest", args, { SEED: seed, EXPLORE_FINDS: finds })) failed++;
}
const found = existsSync(finds)
  ? readFileSync(finds, "utf8")
      .trim()
      .split("\n")
      .map((line) => /** @type {Find} */ (JSON.parse(line)))
  : [];
rmSync(folder, { recursive: true });
for (const find of found) {
  const what = pin(find) ? "pinned" : "pinned before";
  console.log(`${what}: ${relative(ROOT, find.testPath)}, “${find.test}”, seed ${find.seed}`);
}
console.log(`\n${values.runs} seeds tried, ${failed} runs failed, ${found.length} cases found`);
process.exit(failed === 0 ? 0 : 1);
