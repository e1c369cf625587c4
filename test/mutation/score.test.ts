import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { scoreOf, wilson, wordsOf } from "../../scripts/mutation/score.mjs";
import { shuffled } from "../../scripts/mutation/shuffled.mjs";
import { testsThatReach } from "../../scripts/mutation/tests-that-reach.mjs";

// Newcombe, Two-sided confidence intervals for the single proportion, Statist. Med. 17 (1998), table I, method 3.
test.each([
  [81, 263, 0.2553, 0.3662],
  [15, 148, 0.0624, 0.1605],
  [0, 20, 0, 0.1611],
  [1, 29, 0.0061, 0.1718],
])("Wilson's interval of %i in %i is as Newcombe prints it", (hits, tries, low, high) => {
  const [from, to] = wilson(hits, tries);
  expect(from).toBeCloseTo(low, 4);
  expect(to).toBeCloseTo(high, 4);
});

function mutants(...statuses: string[]) {
  const root = mkdtempSync(join(tmpdir(), "score-"));
  writeFileSync(join(root, "a.ts"), "const a = b - 1;\n");
  const location = { start: { line: 1, column: 11 }, end: { line: 1, column: 16 } };
  const rest = { fileName: join(root, "a.ts"), mutatorName: "ArithmeticOperator", location };
  return { root, list: statuses.map((status) => ({ ...rest, status, replacement: "b + 1" })) };
}

test("what no test reaches counts as not noticed, and a sample stands for what was not tried", () => {
  const { root, list } = mutants(
    "Killed",
    "Killed",
    "Timeout",
    "Survived",
    ...Array(4).fill("RuntimeError"),
    "NoCoverage",
    "NoCoverage",
  );
  const score = scoreOf(list, [], root);
  // 8 of 10 are reached, 3 of 4 tried are noticed.
  expect(score).toMatchObject({ tried: 4, killed: 3, reached: 8, unreached: 2 });
  expect(score.share).toBeCloseTo(0.6, 12);
  expect(score.from).toBeLessThan(0.6);
  expect(score.to).toBeGreaterThan(0.6);
  expect(list.map((one) => wordsOf(one, root).words)[0]).toContain(
    "a.ts:1:11 ArithmeticOperator Killed\n  - b - 1\n  + b + 1",
  );
});

test("where all were tried there is nothing to estimate; what is listed as changing nothing does not count", () => {
  const { root, list } = mutants("Killed", "Survived");
  expect(scoreOf(list, [], root)).toMatchObject({ share: 0.5, from: 0.5, to: 0.5, equal: 0 });
  const same = { file: "a.ts", from: "b - 1", to: "b + 1", because: "for this test" };
  expect(scoreOf(list, [{ ...same, to: "b * 1" }], root).share).toBe(0.5);
  expect(scoreOf(list, [same], root)).toMatchObject({ equal: 2, tried: 0 });
});

test("a sample is drawn the same way by the same seed, each one once", () => {
  const all = Array.from({ length: 50 }, (_, i) => i);
  expect(shuffled(all, 7)).toEqual(shuffled(all, 7));
  expect(shuffled(all, 7)).not.toEqual(shuffled(all, 8));
  expect(shuffled(all, 7).toSorted((a, b) => a - b)).toEqual(all);
});

test("tests of other rooms are found by what they import, those of the source tree are not", () => {
  const found = testsThatReach(process.cwd(), ["src/folds/hem-sag.ts"]);
  expect(found).toContain("src/folds/hem-sag.test.ts");
  expect(found).toContain("test/lift/lifts.test.ts");
  expect(found).not.toContain("test/layers.test.ts");
  expect(found).not.toContain("src/units/rulers.test.ts");
});
