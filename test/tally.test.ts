import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { readTally } from "../scripts/tally.mjs";

const folder = mkdtempSync(join(tmpdir(), "shadewright-tally-"));
afterAll(() => rmSync(folder, { recursive: true }));

const one = [{ status: "passed" }];

test.each([
  [
    "all passed",
    { numPassedTests: 7, numTotalTests: 7, testResults: [] },
    { passed: 7, failed: 0, skipped: [] },
  ],
  [
    "some failed",
    { numPassedTests: 5, numTotalTests: 7, testResults: [] },
    { passed: 5, failed: 2, skipped: [] },
  ],
  [
    "a file that did not load",
    {
      numPassedTests: 1,
      numTotalTests: 1,
      testResults: [
        { status: "passed", assertionResults: one },
        { status: "failed", assertionResults: [] },
      ],
    },
    { passed: 1, failed: 1, skipped: [] },
  ],
  [
    "one skipped",
    {
      numPassedTests: 1,
      numTotalTests: 2,
      testResults: [
        { status: "passed", assertionResults: [...one, { status: "skipped", fullName: "a cord is cut" }] },
      ],
    },
    { passed: 1, failed: 1, skipped: ["a cord is cut"] },
  ],
])("%s", (what, report, tally) => {
  const file = join(folder, `${what}.json`);
  writeFileSync(file, JSON.stringify(report));
  expect(readTally(file)).toEqual(tally);
});

test("no report, or none that can be read, is a failure", () => {
  const file = join(folder, "broken.json");
  writeFileSync(file, "{");
  expect(readTally(file)).toEqual({ passed: 0, failed: 1, skipped: [] });
  expect(readTally(join(folder, "missing.json"))).toEqual({ passed: 0, failed: 1, skipped: [] });
});
