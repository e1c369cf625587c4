import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { ensureChromium } from "./chromium.mjs";
import { ensureFirefox, HOW_TO_GET_FIREFOX } from "./firefox.mjs";
import { ensureInstalled } from "./install.mjs";
import { checkNode } from "./node-version.mjs";
import { runTool } from "./run.mjs";
import { readTally } from "./tally.mjs";
import { findWebKit, HOW_TO_GET_WEBKIT } from "./webkit.mjs";

checkNode();
ensureInstalled();
const { buildLib } = await import("./build-lib.mjs");
const { buildWeb } = await import("./build-web.mjs");

let passed = 0;
let failed = 0;
/** @type {string[]} */
const failures = [];

/**
 * One check that passes or fails as a whole; it counts as one test.
 * @param {string} title
 * @param {() => boolean} check
 */
function step(title, check) {
  const started = Date.now();
  console.log(`\n— ${title}`);
  const sound = check();
  if (sound) passed++;
  else {
    failed++;
    failures.push(title);
  }
  console.log(`  ${sound ? "passed" : "FAILED"} in ${((Date.now() - started) / 1000).toFixed(1)} s`);
}

const reports = mkdtempSync(join(tmpdir(), "shadewright-tests-"));

/**
 * One project of tests; each test counts.
 * @param {string} project
 * @param {NodeJS.ProcessEnv} [env]
 */
function tests(project, env = {}) {
  const started = Date.now();
  console.log(`\n— tests: ${project}`);
  const file = join(reports, `${project}.json`);
  const reporters = ["--reporter=default", "--reporter=json", `--outputFile.json=${file}`];
  const plain = process.stdout.isTTY ? {} : { NO_COLOR: "1" };
  // CI forbids writing snapshots that are missing: they fail instead.
  const sound = runTool("vitest", ["run", "--project", project, ...reporters], { CI: "1", ...plain, ...env });
  const tally = readTally(file);
  passed += tally.passed;
  failed += tally.failed;
  // A run can end badly although every test passed, after an error outside of any of them.
  if (!sound && tally.failed === 0) failed++;
  if (!sound || tally.failed > 0) failures.push(`tests: ${project}`);
  for (const title of tally.skipped) console.log(`  SKIPPED, so not passed: ${title}`);
  console.log(`  ${tally.passed} passed in ${((Date.now() - started) / 1000).toFixed(1)} s`);
}

step("types: core", () => runTool("tsc", ["-p", "tsconfig.core.json"]));
step("types: edges and tests", () => runTool("tsc", ["-p", "tsconfig.json"]));
step("types: planner", () => runTool("tsc", ["-p", "tsconfig.web.json"]));
step("types: browser tests", () => runTool("tsc", ["-p", "tsconfig.browser-tests.json"]));
step("lint", () => runTool("biome", ["check", "--no-errors-on-unmatched", "."]));
step("dead code", () => runTool("knip", []));
tests("unit");
step("build: library and command line", buildLib);
tests("cli");
tests("rooms");
step("build: planner", buildWeb);
const chromium = ensureChromium();
if (chromium) tests("e2e", { CHROMIUM: chromium });
else {
  failed++;
  failures.push("tests: e2e (no Chromium)");
}
const firefox = ensureFirefox();
if (firefox) tests("firefox", { FIREFOX: firefox });
const webkit = findWebKit();
if (webkit) tests("webkit");

rmSync(reports, { recursive: true, force: true });
if (failures.length > 0) console.log(`\nFailed: ${failures.join("; ")}`);
if (!firefox) console.log(`\nLEFT OUT: tests: firefox. To try the planner in it, ${HOW_TO_GET_FIREFOX}.`);
if (!webkit) console.log(`\nLEFT OUT: tests: webkit. To try the planner in it, ${HOW_TO_GET_WEBKIT}.`);
console.log(`\n${passed} passed, ${failed} failed`);
process.exit(failed === 0 ? 0 : 1);
