import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { givenCloth, type Sized } from "../../../../test/cutting/given-cloth.ts";
import { stepGridOf } from "../grid.ts";
import type { Bolt, ClothProblem } from "../problem.ts";
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

describe("a strip", () => {
  const every = (from: { length: number }) => Array.from({ length: from.length }, (_, n) => n);
  const PLAIN = { x1: 0, x2: 20, y1: 0, y2: 14, columns: false };

  test("of plain cloth holds the pieces that cover the most of it, one behind the other", () => {
    // By trying every set of the pieces, none wider than the strip.
    const sizes = fc.array(
      fc.record({ w: fc.integer({ min: 1, max: 20 }), h: fc.integer({ min: 1, max: 12 }) }),
      {
        minLength: 1,
        maxLength: 6,
      },
    );
    fc.assert(
      fc.property(fc.array(sizes, { minLength: 10, maxLength: 10 }), (cases) => {
        for (const given of cases) {
          const { grid, bolt } = gridOf(given, 2);
          const places = fillFree(grid, bolt, PLAIN, every(given), "full");
          let most = 0;
          for (let set = 0; set < 1 << given.length; set++) {
            const chosen = given.filter((_, n) => set & (1 << n));
            const length = chosen.reduce((sum, { h }) => sum + h, 0);
            if (length <= 14)
              most = Math.max(
                most,
                chosen.reduce((sum, { w, h }) => sum + w * h, 0),
              );
          }
          const areaOf = (item: number) => (given[item]?.w ?? 0) * (given[item]?.h ?? 0);
          expect(places.reduce((sum, { item }) => sum + areaOf(item), 0)).toBe(most);
          // The largest comes first, and each begins where the one before ends.
          let y = 0;
          let before = Number.POSITIVE_INFINITY;
          for (const place of places) {
            expect([place.x, place.y, place.turned]).toEqual([0, y, false]);
            expect(areaOf(place.item)).toBeLessThanOrEqual(before);
            [y, before] = [y + (given[place.item]?.h ?? 0), areaOf(place.item)];
          }
          expect(y).toBeLessThanOrEqual(14);
        }
      }),
      { numRuns: 8 },
    );
  });

  /** Pieces in a strip of cloth 100 mm wide, in millimetres, from 10 mm on. */
  const laidIn = (
    pieces: readonly Sized[],
    [x2, y2]: readonly [number, number],
    bolt: Partial<Bolt> = {},
    more: Partial<ClothProblem> = {},
  ) => {
    const grid = stepGridOf(
      givenCloth(
        pieces.map((one) => ({ nap: "either", ...one })),
        [bolt],
        more,
      ),
    );
    const [cloth] = grid.bolts;
    if (cloth === undefined) throw new Error("no bolt");
    const free = { x1: 100, x2: 10 * x2, y1: 100, y2: 10 * y2, columns: false };
    return fillFree(grid, cloth, free, every(pieces), "full").map(({ item, x, y, turned }) => [
      item,
      x / 10,
      y / 10,
      turned,
    ]);
  };

  // By hand.
  test("of two pieces that cover as much takes the first, and each the way that takes less of its length", () => {
    expect(laidIn([{ size: [40, 30] }, { size: [40, 30] }], [60, 50])).toEqual([[0, 10, 10, false]]);
    const free: Sized = { size: [20, 60], grain: "free" };
    expect(laidIn([free], [70, 80])).toEqual([[0, 10, 10, true]]);
    // 60 wide finds no room across 40.
    expect(laidIn([free], [50, 80])).toEqual([[0, 10, 10, false]]);
    expect(laidIn([free], [69, 69])).toEqual([]);
    expect(laidIn([free], [30, 70])).toEqual([[0, 10, 10, false]]);
    expect(laidIn([{ size: [60, 20], grain: "free" }], [70, 30])).toEqual([[0, 10, 10, false]]);
  });

  test("on a repeat takes the largest first, each at its next place, and no width that is joined to others", () => {
    const repeat = { alongMm: 50, match: "straight" as const };
    const pieces: Sized[] = [
      { size: [30, 20], start: { alongMm: 5 } },
      { size: [40, 30], start: { alongMm: 20 } },
      { size: [50, 45], join: { group: "j", index: 0 } },
    ];
    // 40 × 30 at 20, then the other at 55; on 74 that finds no room, and neither does the large one on 49.
    expect(laidIn(pieces, [70, 80], {}, { repeat })).toEqual([
      [1, 10, 20, false],
      [0, 10, 55, false],
    ]);
    expect(laidIn(pieces, [70, 74], {}, { repeat })).toEqual([[1, 10, 20, false]]);
    expect(laidIn(pieces, [70, 49], {}, { repeat })).toEqual([]);
  });

  // By hand, on a length of 60: two of 30 cover more than one of 40, but beside a flaw the largest comes first.
  test("keeps clear of the flaws in it, and takes no notice of those beside it", () => {
    const pieces: Sized[] = [{ size: [40, 40] }, { size: [40, 30] }, { size: [39, 30] }];
    const flawAt = (xMm: number, yMm: number) => ({ flaws: [{ xMm, yMm, widthMm: 5, lengthMm: 5 }] });
    const fullest = [
      [1, 10, 10, false],
      [2, 10, 40, false],
    ];
    expect(laidIn(pieces, [60, 70])).toEqual(fullest);
    for (const [x, y] of [
      [60, 20],
      [5, 20],
      [20, 5],
      [20, 70],
    ] as const)
      expect(laidIn(pieces, [60, 70], flawAt(x, y))).toEqual(fullest);
    // Right of what lies 40 wide on 50.
    expect(laidIn(pieces, [60, 70], flawAt(52, 20))).toEqual([[0, 10, 10, false]]);
    // At 20 to 25 the largest begins behind it; to 95 there is room for one more, to 94 not.
    const behind = [0, 10, 25, false];
    expect(laidIn(pieces, [60, 95], flawAt(20, 20))).toEqual([behind, [1, 10, 65, false]]);
    expect(laidIn(pieces, [60, 94], flawAt(20, 20))).toEqual([behind]);
  });
});
