import { readFileSync } from "node:fs";

/**
 * @typedef {{ passed: number, failed: number, skipped: string[] }} Tally
 */

/**
 * Counts the tests of one run from vitest's JSON report. A test that was skipped counts as failed, and so
 * does a file that did not load: what was not tried is not passed. Those skipped are named, since the
 * report of vitest itself calls such a run a good one.
 * @param {string} file
 * @returns {Tally}
 */
export function readTally(file) {
  let report;
  try {
    report = JSON.parse(readFileSync(file, "utf8"));
  } catch {
    return { passed: 0, failed: 1, skipped: [] };
  }
  const files =
    /** @type {{ status: string, assertionResults: { status: string, fullName: string }[] }[]} */ (
      report.testResults
    );
  const unloaded = files.filter(
    (result) => result.status === "failed" && result.assertionResults.length === 0,
  );
  const passed = report.numPassedTests;
  const skipped = files
    .flatMap((result) => result.assertionResults)
    .filter(({ status }) => status !== "passed" && status !== "failed")
    .map(({ fullName }) => fullName);
  return { passed, failed: report.numTotalTests - passed + unloaded.length, skipped };
}
