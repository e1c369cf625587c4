import { existsSync, mkdtempSync, readdirSync, readFileSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, relative } from "node:path";
import { parseArgs } from "node:util";
import { Stryker } from "@stryker-mutator/core";
import { scoreOf, scoreWords } from "./mutation/score.mjs";
import { testsThatReach } from "./mutation/tests-that-reach.mjs";
import { ROOT } from "./run.mjs";

/**
 * Changes the code of some rooms or files in small ways, one at a time, and runs the tests that reach the change:
 * `npm run mutate -- src/folds src/lift/lane-order.ts`. What no test notices is listed, with the share that was.
 * Code runs in a copy that is thrown away; `--at-least 85` fails below that share. Tests are those of the rooms that
 * the changed files are in (`src/<room>`, `test/<room>`), and with them all of the core that import the changed files,
 * by way of others too; `--near` leaves those out, `--beside` those of
 * `test/<room>` as well; what `--tests` names is taken in any case. `--sample 300` tries so many, drawn by `--seed`, and
 * tells the range that the share of all of them lies in, 19 times in 20. `--seconds 5` gives each no more than so many
 * seconds of tests, the most telling first, where there are 20: quicker, and never too good. Changes that change nothing stand, each with its reason, in
 * `test/mutation/equivalent.json`, and do not count.
 */
const { values, positionals } = parseArgs({
  options: {
    "at-least": { type: "string", default: "0" },
    tests: { type: "string", multiple: true, default: [] },
    near: { type: "boolean", default: false },
    beside: { type: "boolean", default: false },
    sample: { type: "string" },
    seed: { type: "string", default: "1" },
    workers: { type: "string", default: "1" },
    seconds: { type: "string" },
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
const homes = values.beside ? ["src"] : ["src", "test"];
const near = [...rooms.flatMap((room) => homes.map((home) => `${home}/${room}`)), ...values.tests]
  .flatMap(filesAt)
  .filter(isTest);
const far = values.near || values.beside ? [] : testsThatReach(ROOT, mutate);
process.chdir(ROOT);
process.env.MUTATION = JSON.stringify({
  tests: [...new Set([...near, ...far])],
  // Of those that came by the imports alone, a test that does not do here is left out.
  optional: far.filter((path) => !near.includes(path)),
  mutated: mutate,
  seed: Number(values.seed),
  memory: join(mkdtempSync(join(tmpdir(), "mutate-")), "tests.json"),
  ...(values.sample === undefined ? {} : { sample: Number(values.sample) }),
  ...(values.seconds === undefined ? {} : { seconds: Number(values.seconds) }),
});
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
  reporters: ["progress-append-only", "survivors", ...(values.json === undefined ? [] : ["json"])],
  ...(values.json === undefined ? {} : { jsonReporter: { fileName: values.json } }),
  // What runs on and on is ended by counting; this ends only what hangs otherwise, on a machine with other work.
  timeoutMS: 120_000,
  dryRunTimeoutMinutes: 60,
  allowConsoleColors: process.stdout.isTTY,
});
/** @type {import("./mutation/score.mjs").Equivalent[]} */
const equivalent = JSON.parse(readFileSync(join(ROOT, "test/mutation/equivalent.json"), "utf8"));
const score = scoreOf(await stryker.runMutationTest(), equivalent, ROOT);
console.log(scoreWords(score, equivalent.length));
if (score.share * 100 < Number(values["at-least"])) process.exit(1);
