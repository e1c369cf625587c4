import { statSync } from "node:fs";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { Stryker } from "@stryker-mutator/core";
import { ROOT } from "./run.mjs";

/**
 * Changes the code of some rooms or files in small ways, one at a time, and runs the tests that reach the change:
 * `npm run mutate -- src/folds src/lift/lane-order.ts`. What no test notices is listed, with the share that was.
 * Code runs in a copy that is thrown away; `--at-least 85` fails below that share. Tests are those of the rooms that
 * the changed files are in, or those named: `--tests src/lift/lane-order.test.ts --tests test/lifts.test.ts`.
 */
const { values, positionals } = parseArgs({
  options: {
    "at-least": { type: "string", default: "0" },
    tests: { type: "string", multiple: true, default: [] },
    workers: { type: "string", default: "1" },
  },
  allowPositionals: true,
});
if (positionals.length === 0) {
  console.error("Say what to change: npm run mutate -- src/folds");
  process.exit(2);
}

const mutate = positionals.flatMap((path) =>
  statSync(join(ROOT, path)).isDirectory()
    ? [`${path}/**/*.ts`, `!${path}/**/*.test.ts`, `!${path}/**/index.ts`]
    : [path],
);
const rooms = new Set(positionals.map((path) => path.split("/").slice(0, 2).join("/")));
process.chdir(ROOT);
const ofRooms = [...rooms].map((room) => `${room}/**/*.test.ts`);
process.env.MUTATION_TESTS = (values.tests.length > 0 ? values.tests : ofRooms).join(",");
const stryker = new Stryker({
  mutate,
  testRunner: "vitest",
  plugins: ["@stryker-mutator/vitest-runner"],
  vitest: { configFile: "test/mutation/vitest.config.ts", related: true },
  // What runs while test files are read, for whole groups of tests, is judged by the tests that run it as well.
  ignoreStatic: true,
  concurrency: Number(values.workers),
  ignorePatterns: ["dist", "out", "docs", "test/gallery/output", "src/web"],
  tempDirName: ".mutants",
  // It would rewrite those for its copy by an interface that TypeScript no longer has.
  tsconfigFile: "none",
  reporters: ["clear-text"],
  clearTextReporter: { allowColor: process.stdout.isTTY, logTests: false, reportTests: false },
  timeoutMS: 60_000,
  thresholds: { high: 95, low: 85, break: Number(values["at-least"]) || null },
  allowConsoleColors: process.stdout.isTTY,
});
await stryker.runMutationTest();
