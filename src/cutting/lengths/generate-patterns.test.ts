import { describe, expect, test } from "vitest";
import { endOf } from "../../../test/cutting/end-of.ts";
import { TO_MEASURE } from "./bar-pattern.ts";
import { generatePatterns, type Pattern } from "./generate-patterns.ts";

const ENDLESS = Number.POSITIVE_INFINITY;
const sold = (size: number, cost: number, available = ENDLESS) => ({ size, cost, available });

/** Patterns in use with their amounts, worths, and the patterns that were found on the way. */
function fractions(
  sizes: number[],
  demand: number[],
  stock: ReturnType<typeof sold>[],
  { toMeasure, pool = [] }: { toMeasure?: number[]; pool?: Pattern[] } = {},
) {
  const whole = { sizes, demand, stock, costStep: 0, ...(toMeasure ? { toMeasure } : {}) };
  const given = pool.length;
  const rest = { demand, available: stock.map(({ available }) => available) };
  const { used, duals } = endOf(generatePatterns(whole, rest, pool));
  return {
    used: used.map(({ pattern, amount }) => [pattern.stock, pattern.counts, Math.round(1e4 * amount) / 1e4]),
    worths: [...duals].map((one) => Math.round(1e6 * one) / 1e6),
    found: pool.slice(given),
  };
}

// By hand: of one size alone the lengths that are cheapest by the cut are the best, and no other pattern is looked for.
describe("lengths with one size alone", () => {
  test.each([
    ["two on a length at 0.5 each", [sold(20, 1), sold(10, 0.6)], [0, [2], 1.5], 0.5],
    ["one on a shorter at 0.6 against 0.65", [sold(20, 1.3), sold(10, 0.6)], [1, [1], 3], 0.6],
    ["the first of two alike", [sold(20, 1), sold(20, 1)], [0, [2], 1.5], 0.5],
    ["none on what is too short", [sold(9, 0), sold(10, 1)], [1, [1], 3], 1],
    ["no more on one than are wanted", [sold(90, 1.5), sold(10, 0.6)], [0, [3], 1], 0.5],
  ] as const)("%s", (_, stock, used, worth) => {
    expect(fractions([10], [3], [...stock])).toEqual({ used: [used], worths: [worth], found: [] });
  });

  test("bought to measure where that is no dearer", () => {
    const stock = [sold(20, 1)];
    const of = (cost: number) => fractions([10], [3], stock, { toMeasure: [cost] });
    expect(of(0.4)).toEqual({ used: [[TO_MEASURE, [1], 3]], worths: [0.4], found: [] });
    expect(of(0.5)).toEqual({ used: [[TO_MEASURE, [1], 3]], worths: [0.5], found: [] });
    expect(of(0.51)).toEqual({ used: [[0, [2], 1.5]], worths: [0.5], found: [] });
  });

  test("at hand are looked for, each no more often than it is there", () => {
    // Two of 20 hold four of 10 at 1 each; the fifth and sixth cost 3.
    const { used, worths, found } = fractions([10], [6], [sold(10, 3), sold(20, 2, 2)]);
    expect(found).toEqual([{ stock: 1, types: [0], counts: [2] }]);
    expect(used.toSorted()).toEqual([
      [0, [1], 2],
      [1, [2], 2],
    ]);
    expect(worths).toEqual([3]);
  });

  test("that are not there are worth a thousand of the dearest", () => {
    // One at hand holds two of three, and nothing is sold.
    const of = (cost: number) => fractions([10], [3], [sold(20, cost, 1)]).worths[0];
    expect(of(5)).toBe(5000);
    expect(of(0.5)).toBe(1000);
  });
});

describe("two sizes", () => {
  // By hand, on 10: a 6 and a 4 fill it; 6 alone and two of 4 waste cloth. Worths of 0.5 for 4 (two alone) and so for 6.
  test("share a length where that is cheaper than each alone", () => {
    const { used, worths, found } = fractions([6, 4], [3, 5], [sold(10, 1)]);
    expect(found).toEqual([{ stock: 0, types: [0, 1], counts: [1, 1] }]);
    expect(used.toSorted()).toEqual([
      [0, [1, 1], 3],
      [0, [2], 1],
    ]);
    expect(worths).toEqual([0.5, 0.5]);
  });

  test("of which none is wanted are left out", () => {
    expect(fractions([6, 4], [0, 5], [sold(10, 1)])).toEqual({
      used: [[0, [2], 2.5]],
      worths: [0, 0.5],
      found: [],
    });
  });
});

describe("patterns of before", () => {
  test("serve where no more is in them than is wanted, on what is still there", () => {
    const stock = [sold(40, 1), sold(40, 0.1, 0)];
    const four: Pattern = { stock: 0, types: [0], counts: [4] };
    const none: Pattern = { stock: 1, types: [0], counts: [3] };
    // Three are wanted: a pattern of four would cost 0.75.
    expect(fractions([10], [3], stock, { pool: [four, none] })).toMatchObject({
      used: [[0, [3], 1]],
      worths: [0.333333],
      found: [],
    });
    const both: Pattern = { stock: 0, types: [0, 1], counts: [1, 1] };
    expect(fractions([6, 4], [3, 3], [sold(10, 1)], { pool: [both] })).toMatchObject({
      used: [[0, [1, 1], 3]],
      found: [],
    });
  });
});
