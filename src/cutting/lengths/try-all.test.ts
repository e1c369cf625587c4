import { expect, test } from "vitest";
import { TO_MEASURE } from "./bar-pattern.ts";
import { tryAll } from "./try-all.ts";

const ENDLESS = Number.POSITIVE_INFINITY;
const sold = (size: number, cost: number, available = ENDLESS) => ({ size, cost, available });

/** The cheapest bars for one cut of each size: stock and the sizes on it. */
function cheapest(sizes: number[], stock: ReturnType<typeof sold>[], toMeasure?: number[], below = ENDLESS) {
  const demand = sizes.map(() => 1);
  const whole = { sizes, demand, stock, costStep: 0, ...(toMeasure ? { toMeasure } : {}) };
  const { bars, proved } = tryAll(whole, below);
  expect(proved).toBe(true);
  return bars?.map(({ stock: s, types }) => [s, ...types.map((type) => sizes[type])]);
}

// By hand.
test("cuts lie on one length as far as it goes, and no further", () => {
  expect(cheapest([5, 4, 3], [sold(12, 2)])).toEqual([[0, 5, 4, 3]]);
  // Three do not go into 11: the first two found cost the same as any others.
  expect(cheapest([5, 4, 3], [sold(11, 2)])).toEqual([
    [0, 5, 4],
    [0, 3],
  ]);
  // 6 + 2 and 4 + 4 fill two of 8; longest first, 6 leaves 2, and the others 4 each.
  expect(cheapest([6, 4, 4, 2], [sold(8, 1)])).toEqual([
    [0, 6, 2],
    [0, 4, 4],
  ]);
});

test("a length at hand is used as often as it is there, where that costs less", () => {
  // 5 + 3 on the 8 at hand, 4 on a new one: 1 + 5; all on a new one: 5.
  expect(cheapest([5, 4, 3], [sold(8, 1, 1), sold(12, 5)])).toEqual([[1, 5, 4, 3]]);
  expect(cheapest([5, 4, 3], [sold(8, 1, 2), sold(12, 5)])).toEqual([
    [0, 5, 3],
    [0, 4],
  ]);
  // One at hand holds one of two that fill it; which of the two is all one.
  expect(cheapest([8, 8], [sold(8, 0, 1), sold(9, 3)])).toEqual([
    [0, 8],
    [1, 8],
  ]);
  // It is there again for the next way: 7 on it and 9 bought cost 3, the other way nothing holds the 9.
  expect(cheapest([9, 7], [sold(9, 3, 1), sold(7, 0, 1)])).toEqual([
    [0, 9],
    [1, 7],
  ]);
});

test("a cut bought to measure shares its length with no other", () => {
  expect(cheapest([5, 4], [sold(9, 10)], [4, 3])).toEqual([
    [TO_MEASURE, 5],
    [TO_MEASURE, 4],
  ]);
  expect(cheapest([5, 4], [sold(9, 6)], [4, 3])).toEqual([[0, 5, 4]]);
  expect(cheapest([5, 4], [sold(4, 1, 1)], [4, 3])).toEqual([
    [TO_MEASURE, 5],
    [0, 4],
  ]);
});

test("only what costs less than the limit is looked for", () => {
  expect(cheapest([5, 4, 3], [sold(12, 2)], undefined, 2)).toBeUndefined();
  expect(cheapest([5, 4, 3], [sold(12, 2)], undefined, 2 + 5e-10)).toBeUndefined();
  expect(cheapest([5, 4, 3], [sold(12, 2)], undefined, 2.001)).toEqual([[0, 5, 4, 3]]);
});

test("of too many placings nothing is proved, and the best till then stands", () => {
  // Two go on a length, never three: of sixteen there are 15 · 13 · 11 · … = 2,027,025 ways to pair them.
  const sizes = Array.from({ length: 16 }, (_, n) => 49 - n);
  const whole = { sizes, demand: sizes.map(() => 1), stock: [sold(100, 1)], costStep: 0 };
  const { bars, proved } = tryAll(whole, ENDLESS);
  expect([bars?.length, proved]).toEqual([8, false]);
});
