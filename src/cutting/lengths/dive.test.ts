import { expect, test } from "vitest";
import type { PatternBar } from "./bar-pattern.ts";
import { dive } from "./dive.ts";
import type { Pattern } from "./generate-patterns.ts";

// By hand: lengths of 10, four cuts of 5 and two of 3.
const whole = {
  sizes: [5, 3],
  demand: [4, 2],
  stock: [{ size: 10, cost: 1, available: Number.POSITIVE_INFINITY }],
  costStep: 1,
};
const fives: Pattern = { stock: 0, types: [0], counts: [2] };
const both: Pattern = { stock: 0, types: [0, 1], counts: [1, 1] };
const threes: Pattern = { stock: 0, types: [1], counts: [3] };

/** The plans that a dive offers, how often it pauses, and which of how many fractions it was asked for. */
function dived(used: { pattern: Pattern; amount: number }[], isEnough = false) {
  const plans: PatternBar[][] = [];
  const picked: number[] = [];
  const offer = (bars: PatternBar[]) => plans.push(structuredClone(bars)) > 0 && isEnough;
  const pick = (count: number) => picked.push(count) * 0;
  const pauses = [...dive({ whole, pool: [], pick, offer }, { used, duals: new Float64Array(2) })].length;
  return { plans: plans.map((bars) => bars.map(({ types }) => types.join(""))), pauses, picked };
}

test("whole parts of the fractions are cut as they are, and nothing is solved once all is met", () => {
  const met = [
    { pattern: fives, amount: 2 },
    { pattern: threes, amount: 1 },
  ];
  // Of three 3s in the pattern two are wanted.
  expect(dived(met)).toEqual({ plans: [["00", "00", "11"]], pauses: 0, picked: [] });
  // A hair below a whole number is one.
  expect(dived(met.map((one) => ({ ...one, amount: one.amount - 1e-6 }))).plans[0]).toEqual([
    "00",
    "00",
    "11",
  ]);
});

test("where none is whole one is taken, the largest first, and first-fit fills the rest", () => {
  const parts = [
    { pattern: threes, amount: 0.4 },
    { pattern: both, amount: 0.9 },
  ];
  const { plans, picked } = dived(parts, true);
  expect(picked).toEqual([2]);
  expect(plans).toEqual([["01", "00", "01"]]);
});

test("it ends at the first plan that nothing can better", () => {
  const one = [{ pattern: both, amount: 1 }];
  expect(dived(one, true)).toMatchObject({ plans: [["01", "00", "01"]], pauses: 0 });
  const on = dived(one);
  expect(on.plans.length).toBeGreaterThan(1);
  expect(on.pauses).toBeGreaterThan(0);
});
