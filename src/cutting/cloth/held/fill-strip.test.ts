import { describe, expect, test } from "vitest";
import { givenCloth } from "../../../../test/cutting/given-cloth.ts";
import { stepGridOf } from "../grid.ts";
import type { FreeArea } from "./bands.ts";
import { type ColumnAim, fillFree } from "./fill-strip.ts";

/** Pieces of so many tenths of a millimetre, a step each, and a last one that makes a step of every length. */
function gridOf(sizes: readonly { w: number; h: number }[], widthMm: number) {
  const all = [...sizes, { w: 1, h: 1 }].map(({ w, h }) => ({ size: [w / 10, h / 10] as const }));
  const grid = stepGridOf(givenCloth(all, [{ widthMm }]));
  const [bolt] = grid.bolts;
  if (bolt === undefined) throw new Error("no bolt");
  return { grid, bolt };
}

describe("what is free in a band", () => {
  // By hand, in an area of 6 × 10: a wide column of one piece of 6 × 7 covers 42; one of 4 × 10 covers 40, all of its
  // width, and leaves room for a column of 2 × 10.
  test("takes the column that covers the most, or that loses the least of its width", () => {
    const sizes = [
      { w: 6, h: 7 },
      { w: 4, h: 10 },
      { w: 2, h: 10 },
    ];
    const { grid, bolt } = gridOf(sizes, 1.2);
    const free: FreeArea = { x1: 3, x2: 9, y1: 5, y2: 15, columns: true };
    const at = (aim: ColumnAim) =>
      fillFree(grid, bolt, free, [0, 1, 2], aim).map(({ item, x, y }) => [item, x, y]);
    expect(at("full")).toEqual([[0, 3, 5]]);
    expect(at("dense")).toEqual([
      [1, 3, 5],
      [2, 7, 5],
    ]);
  });

  // By hand, 20 wide: two of 70 % of it fill 140 % of the length of one of 80 %, but no table of sums is made so long.
  test("longer than a table of sums can be is filled largest first", () => {
    const taken = (scale: number) => {
      const sizes = [70, 80, 70].map((h) => ({ w: 20, h: h * scale }));
      const { grid, bolt } = gridOf(sizes, 2);
      const free = { x1: 0, x2: 20, y1: 0, y2: 140 * scale, columns: false };
      return fillFree(grid, bolt, free, [0, 1, 2], "full").map(({ item }) => item);
    };
    expect(taken(1).sort()).toEqual([0, 2]);
    // Three pieces on 1,400,000 steps.
    expect(taken(10_000)).toEqual([1]);
  });
});
