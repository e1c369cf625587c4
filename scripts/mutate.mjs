import { existsSync, readdirSync, statSync } from "node:fs";
import { join, relative } from "node:path";
import { parseArgs } from "node:util";
import { Stryker } from "@stryker-mutator/core";
import { ROOT } from "./run.mjs";

/**
 * Changes the code of some rooms or files in small ways, one at a time, and runs the tests that reach the change:
 * `npm run mutate -- src/folds src/lift/lane-order.ts`. What no test notices is listed, with the share that was.
 * Code runs in a copy that is thrown away; `--at-least 85` fails below that share. Tests are those of the rooms that
 * the changed files are in (`src/<room>`, `test/<room>`) and those named beside: `--tests test/lifts.test.ts`.
 */
const { values, positionals } = parseArgs({
  options: {
    "at-least": { type: "string", default: "0" },
    tests: { type: "string", multiple: true, default: [] },
    workers: { type: "string", default: "1" },
    json: { type: "string" },
  },
  allowPositionals: true,
});
if (positionals.length === 0) {
  console.error("Say what to change: npm run mutate -- src/folds");
  process.exit(2);
}

/**
 * @param {string} path of a file or a folder, from the top of the project
 * @returns {string[]} the TypeScript files there
 */
function filesAt(path) {
  const whole = join(ROOT, path);
  if (!existsSync(whole)) return [];
  if (!statSync(whole).isDirectory()) return [path];
  return readdirSync(whole, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith(".ts"))
    .map((entry) => relative(ROOT, join(entry.parentPath, entry.name)))
    .sort();
}

const isTest = (/** @type {string} */ path) => path.endsWith(".test.ts");
const mutate = positionals.flatMap(filesAt).filter((path) => !isTest(path) && !path.endsWith("/index.ts"));
const rooms = [...new Set(mutate.map((path) => path.split("/")[1] ?? ""))];
const tests = [...rooms.flatMap((room) => [`src/${room}`, `test/${room}`]), ...values.tests]
  .flatMap(filesAt)
  .filter(isTest);
process.chdir(ROOT);
process.env.MUTATION = JSON.stringify({ tests: [...new Set(tests)], mutated: mutate });
const stryker = new Stryker({
  mutate,
  testRunner: "warm",
  plugins: [new URL("mutation/warm-runner.mjs", import.meta.url).href],
  // What runs while the code itself is read, a table or a constant, is judged by the tests that run it as well.
  ignoreStatic: true,
  concurrency: Number(values.workers),
  ignorePatterns: ["dist", "out", "docs", "test/gallery/output", "src/web"],
  tempDirName: ".mutants",
  // It would rewrite those for its copy by an interface that TypeScript no longer has.
  tsconfigFile: "none",
  reporters: ["progress-append-only", "clear-text", ...(values.json === undefined ? [] : ["json"])],
  ...(values.json === undefined ? {} : { jsonReporter: { fileName: values.json } }),
  clearTextReporter: { allowColor: process.stdout.isTTY, logTests: false, reportTests: false },
  timeoutMS: 15_000,
  thresholds: { high: 95, low: 85, break: Number(values["at-least"]) || null },
  allowConsoleColors: process.stdout.isTTY,
});
await stryker.runMutationTest();
