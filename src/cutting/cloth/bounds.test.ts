import { describe, expect, test } from "vitest";
import { endOf } from "../../../test/cutting/end-of.ts";
import { givenCloth, type Sized } from "../../../test/cutting/given-cloth.ts";
import { barBound } from "./bar-bound.ts";
import { measuresOf } from "./exact/measures.ts";
import { type StepGrid, stepGridOf } from "./grid.ts";
import type { Bolt, ClothProblem } from "./index.ts";
import { barsOf, quickBound, strictBound } from "./lower-bound.ts";
import { latticeSpread, plainSpread } from "./spread.ts";

const ENDLESS = Number.POSITIVE_INFINITY;

/** Cloth of 100 mm at 1 a millimetre, on a grid of tenths. */
function gridOf(
  pieces: readonly Sized[],
  bolts: readonly Partial<Bolt>[] = [{}],
  more: Partial<ClothProblem> = {},
): StepGrid {
  return stepGridOf(
    givenCloth(
      pieces.map((piece) => ({ nap: "either", ...piece })),
      bolts,
      more,
    ),
  );
}

describe("strips put together anew", () => {
  const endless = { width: 10, length: ENDLESS, cost: 1 };

  // By hand: on 10 a 6 goes with a 4, two 4 without it: 30 strips with a 6, 10 of them with a 4 as well.
  test("cost what the best patterns do", () => {
    const bars = { widths: [6, 4], limits: [9, 9], turning: [], stock: [endless] };
    expect(endOf(barBound({ ...bars, demand: [30, 10] })).cost).toBeCloseTo(30, 6);
    // 50 of the 4 beyond those beside a 6 go two by two.
    expect(endOf(barBound({ ...bars, demand: [30, 80] })).cost).toBeCloseTo(30 + 25, 6);
    // No more than one of it at a time, where there is but one.
    expect(endOf(barBound({ ...bars, limits: [9, 1], demand: [30, 80] })).cost).toBeCloseTo(80, 6);
  });

  // By hand: half of 5 goes twice into 10, the 6 once.
  test("of a piece that may be turned take the way that costs less, however much of the rest there is", () => {
    const turning = [{ upright: { width: 0, length: 5 }, turned: { width: 1, length: 6 } }];
    const bars = { widths: [6, 5], limits: [9, 9], turning, stock: [endless] };
    for (const one of [0, 3, 6, 9]) {
      // Either way takes a strip of 5, or half of one of 6 long.
      expect(endOf(barBound({ ...bars, demand: [one, 0] })).cost).toBeCloseTo(one + 3, 6);
    }
    // Shorter upright it takes a strip of 2 alone; turned, half of one of 6: 3.
    const upright = [{ upright: { width: 0, length: 2 }, turned: { width: 1, length: 6 } }];
    expect(endOf(barBound({ ...bars, turning: upright, demand: [0, 0] })).cost).toBeCloseTo(2, 6);
  });

  // By hand: 20 of the cheap cloth at 0.5 hold 20 of the 6; the other 10 cost 1 each.
  test("come off what is at hand as far as it goes", () => {
    const left = { width: 10, length: 20, cost: 0.5 };
    const bars = { widths: [6], limits: [9], turning: [], stock: [left, endless] };
    expect(endOf(barBound({ ...bars, demand: [30] })).cost).toBeCloseTo(20, 6);
    expect(endOf(barBound({ ...bars, demand: [15] })).cost).toBeCloseTo(7.5, 6);
    // Each round finds a better strip, and there is but one of each cloth: the last finds none.
    expect([...barBound({ ...bars, demand: [30] })].length).toBeLessThanOrEqual(3);
    // It is worth 0.5 less at hand, and a strip of the 6 is worth what the dear one costs.
    const { worth } = endOf(barBound({ ...bars, demand: [30] }));
    expect(worth[0]).toBeCloseTo(1, 6);
  });

  // By hand: of one width the strip of the endless cloth is known at once, and no better pattern is looked for.
  test("of one width need no round", () => {
    const rounds = (stock: readonly (typeof endless)[]) =>
      [...barBound({ widths: [4], limits: [9], turning: [], stock: [...stock], demand: [30] })].length;
    expect(rounds([endless])).toBe(0);
    expect(rounds([{ width: 3, length: 50, cost: 0 }, endless])).toBe(0);
    // What is at hand is looked for.
    expect(rounds([{ ...endless, length: 50, cost: 0.1 }, endless])).toBe(1);
  });

  test("a dearer wide cloth serves where it holds more for its price", () => {
    const wide = { width: 20, length: 100, cost: 1.5 };
    const bars = { widths: [6], limits: [9], turning: [], stock: [endless, wide] };
    expect(endOf(barBound({ ...bars, demand: [30] })).cost).toBeCloseTo(15, 6);
    expect(endOf(barBound({ ...bars, limits: [1], demand: [30] })).cost).toBeCloseTo(30, 6);
  });
});

describe("the strict bound", () => {
  const strict = (...given: Parameters<typeof gridOf>) => endOf(strictBound(gridOf(...given)));

  // By hand: 34 goes twice into 100, not thrice; by their area twelve would take 408, so five lengths.
  test("is what a plan costs where strips alone keep pieces apart", () => {
    const thirds = Array.from({ length: 12 }, (): Sized => ({ size: [34, 100] }));
    expect(strict(thirds)).toEqual({ cost: 600, which: "bars" });
    expect(quickBound(gridOf(thirds)).cost).toBe(500);
    // With gaps of 2: six layers and five gaps between them.
    expect(strict(thirds, [{}], { gapMm: 2 }).cost).toBe(610);
  });

  // By hand: 60 wide is too wide for the narrow cloth, and goes once into the wide one, 34 thrice.
  test("looks at the widest of several cloths", () => {
    const bolts = [{ widthMm: 50, lengthMm: 1 }, { widthMm: 110 }];
    const { cost } = strict([{ size: [60, 40] }, { size: [60, 40] }, { size: [60, 40] }], bolts);
    expect(cost).toBeGreaterThan(119);
    expect(cost).toBeLessThanOrEqual(120);
    expect(strict([{ size: [60, 40] }, { size: [60, 40] }], [...bolts].reverse()).cost).toBeGreaterThan(79);
  });

  // By hand: on a repeat of 50, lengths of 30 that all begin at one place lie 50 apart.
  test("gains from the repeat on one cloth, and over several where it gains more than their tails cost", () => {
    const repeat = { repeat: { alongMm: 50, match: "straight" as const } };
    const six = Array.from({ length: 6 }, (): Sized => ({ size: [60, 30], start: { alongMm: 0 } }));
    expect(strict(six, [{}], repeat).cost).toBe(5 * 50 + 30);
    // Two cloths save a tail of 20 each.
    const two = strict(six, [{}, { costPerMm: 2 }], repeat).cost;
    expect(two).toBeGreaterThan(299.9 - 3 * 20);
    expect(two).toBeLessThanOrEqual(4 * 50 + 2 * 30);
    // A few gain less than the tails cost: then their lengths alone count.
    expect(strict(six.slice(0, 2), [{}, { costPerMm: 2 }], repeat).cost).toBeGreaterThan(59.9);
  });

  test("counts nothing for a piece that fits no cloth", () => {
    expect(strict([{ size: [120, 90] }, { size: [60, 40] }]).cost).toBeCloseTo(40, 6);
    expect(strict([{ size: [120, 90], grain: "free", nap: "either" }, { size: [60, 40] }]).cost).toBeCloseTo(
      160,
      6,
    );
  });

  // By hand: 30 of the leftover at a half, 30 of the new. A row is 50, but nothing follows either of them.
  test("holds where a leftover ends just behind a piece, before the next row", () => {
    const repeat = { alongMm: 50, match: "straight" as const };
    const two = [0, 1].map((): Sized => ({ size: [100, 30], start: { alongMm: 0 } }));
    for (const gapMm of [0, 2]) {
      const given = [two, [{ lengthMm: 30, costPerMm: 0.5 }, {}], { repeat, gapMm }] as const;
      expect(quickBound(gridOf(...given)).cost).toBeCloseTo(45, 2);
      expect(strict(...given).cost).toBeCloseTo(45, 2);
    }
  });

  test("is nothing where there are too many widths and cloths to look at", () => {
    const many = Array.from({ length: 600 }, (_, n) => ({ lengthMm: 10, costPerMm: 1 + n }));
    expect(strict([{ size: [60, 40] }], many).cost).toBe(0);
  });

  test("of hundreds of widths is that of widths rounded down to a few", () => {
    const pieces = Array.from({ length: 420 }, (_, n): Sized => ({ size: [51 + n / 10, 1 + (n % 7)] }));
    const grid = gridOf(pieces);
    const bars = barsOf(grid, plainSpread(grid));
    expect(bars.widths.length).toBeLessThanOrEqual(300);
    expect(bars.widths.length).toBeGreaterThan(200);
    expect(bars.limits.reduce((a, b) => a + b, 0)).toBe(420);
    const lengths = pieces.reduce((sum, { size }) => sum + 10 * size[1], 0);
    expect(bars.demand.reduce((a, b) => a + b, 0)).toBe(lengths);
    // No wider than they are, and narrower by no more than a step between them, and a step of the grid.
    const area = pieces.reduce((sum, { size }) => sum + 100 * size[0] * size[1], 0);
    const rounded = bars.demand.reduce((sum, length, k) => sum + length * (bars.widths[k] as number), 0);
    expect(rounded).toBeLessThanOrEqual(area);
    expect(rounded).toBeGreaterThan(area - lengths * (419 / 299 + 1));
    expect(Math.min(...bars.widths)).toBe(510);
    expect(Math.max(...bars.widths)).toBeGreaterThan(510 + 419 - 3);
    // All are wider than half the cloth: one below the other.
    expect(endOf(strictBound(grid)).cost).toBeCloseTo(lengths / 10, 6);
  });
});

describe("what the repeat takes behind each piece", () => {
  const spreadOf = (...given: Parameters<typeof gridOf>) => {
    const grid = gridOf(...given);
    if (!grid.lattice) throw new Error("no repeat");
    return latticeSpread(grid, grid.lattice);
  };
  const repeat: Partial<ClothProblem> = { repeat: { alongMm: 50, match: "straight" } };

  // By hand, in tenths, on a repeat of 50 mm.
  test("is the way on to the nearest start of another, and the last saves the most of it", () => {
    // From 0 on 30 end at 30: to 40 it is 10. From 40 on 25 end at 65, so at 15: to 0 it is 35.
    expect(
      spreadOf(
        [
          { size: [60, 30], start: { alongMm: 0 } },
          { size: [60, 25], start: { alongMm: 40 } },
        ],
        [{}],
        repeat,
      ),
    ).toEqual({ w: [600, 600], h: [300 + 100, 250 + 350], tailX: 0, tailY: 350, lead: 0, rows: 0 });
    // Two alike may follow each other: from 0 on 30 to 50 it is 20, but 10 to the other.
    expect(
      spreadOf(
        [
          { size: [60, 30], start: { alongMm: 0 } },
          { size: [60, 30], start: { alongMm: 0 } },
          { size: [60, 20], start: { alongMm: 10 } },
        ],
        [{}],
        { ...repeat, gapMm: 1 },
      ),
      // 31 with the gap: 10 + 50 − 31 = 29 to the other, 19 to one alike; from 31 on 19 to 0.
    ).toMatchObject({ h: [310 + 190, 310 + 190, 210 + 190], tailY: 10 + 190, rows: 0 });
  });

  test("is nothing where one of them may begin anywhere, or two joins are free", () => {
    expect(
      spreadOf([{ size: [60, 30], start: { alongMm: 0 } }, { size: [60, 30] }], [{}], repeat),
    ).toMatchObject({ h: [300, 300], tailY: 0 });
    const joined = (group: string): Sized => ({ size: [60, 30], join: { group, index: 0 } });
    const held: Sized = { size: [60, 30], start: { alongMm: 0 } };
    expect(spreadOf([joined("a"), joined("b"), held], [{}], repeat)).toMatchObject({ h: [300, 300, 300] });
    expect(spreadOf([joined("a"), joined("a"), held], [{}], repeat)).toMatchObject({ h: [300, 300, 300] });
  });

  test("is whole rows where all begin at one place, from the first row on", () => {
    const start = { alongMm: 10 };
    expect(
      spreadOf(
        [
          { size: [60, 30], start },
          { size: [60, 80], start },
        ],
        [{ rowMm: 5 }],
        repeat,
      ),
    ).toEqual({ w: [600, 600], h: [500, 1000], tailX: 0, tailY: 200, lead: 150, rows: 500 });
  });

  // By hand: the rows of the one bolt begin 5 mm from its end; a half drop has one every 25 mm.
  test("begins at the first start that any piece has, on one bolt, and at once where one is free or joined", () => {
    const leadOf = (starts: readonly Partial<Sized>[], bolts: readonly Partial<Bolt>[] = [{ rowMm: 5 }]) =>
      spreadOf(
        starts.map((more) => ({ size: [60, 30], ...more })),
        bolts,
        repeat,
      ).lead;
    const at = (alongMm: number): Partial<Sized> => ({ start: { alongMm } });
    expect(leadOf([at(0), at(10)])).toBe(50);
    expect(leadOf([at(20), at(10)])).toBe(150);
    expect(leadOf([at(47)])).toBe(20);
    expect(leadOf([at(10), {}])).toBe(0);
    expect(leadOf([at(10), { join: { group: "j", index: 0 } }])).toBe(0);
    expect(leadOf([at(10)], [{ rowMm: 5 }, { rowMm: 5 }])).toBe(0);
    const start = { alongMm: 30, acrossMm: 0 };
    const half: Partial<ClothProblem> = { repeat: { alongMm: 50, acrossMm: 20, match: "half-drop" } };
    expect(spreadOf([{ size: [20, 30], start }], [{ rowMm: 5 }], half).lead).toBe(100);
  });

  test("is the same across, where the pattern has columns", () => {
    const pieces: Sized[] = [
      { size: [25, 30], start: { acrossMm: 0 } },
      { size: [35, 30], start: { acrossMm: 5 } },
    ];
    const columns: Partial<ClothProblem> = { repeat: { alongMm: 50, acrossMm: 20, match: "straight" } };
    // 25 ends at 5, just where the other begins; 35 from 5 on ends at 40, at 0.
    expect(spreadOf(pieces, [{}], columns)).toMatchObject({ w: [250, 350], tailX: 0 });
    // 22 ends at 2: 3 to the other; 31 from 5 on ends at 16: 4 to the first.
    const loose: Sized[] = [
      { size: [22, 30], start: { acrossMm: 0 } },
      { size: [31, 30], start: { acrossMm: 5 } },
    ];
    expect(spreadOf(loose, [{}], columns)).toMatchObject({ w: [220 + 30, 310 + 40], tailX: 40 });
    expect(spreadOf([...loose, { size: [9, 9] }], [{}], columns)).toMatchObject({ w: [220, 310, 90] });
  });

  test("half a repeat is enough in a half drop", () => {
    const half: Partial<ClothProblem> = { repeat: { alongMm: 50, acrossMm: 20, match: "half-drop" } };
    const start = { alongMm: 10, acrossMm: 0 };
    expect(
      spreadOf(
        [
          { size: [20, 30], start },
          { size: [20, 40], start },
        ],
        [{}],
        half,
      ),
      // To the next of 25: 30 → 50, 40 → 50; alone of their start they are two.
    ).toMatchObject({ h: [300 + 200, 400 + 100], tailY: 200, lead: 100, rows: 0 });
  });

  test("a start that rounding hardly passed counts as reached, by the slack of both", () => {
    // Repeat of 64.17 mm: the finest grid, 320 steps in a millimetre.
    const fine: Partial<ClothProblem> = { repeat: { alongMm: 64.17, match: "straight" } };
    const start = { alongMm: 1.003 };
    const grid = gridOf(
      [
        { size: [60, 64.17], start },
        { size: [60, 64.17], start },
      ],
      [{}],
      fine,
    );
    if (!grid.lattice) throw new Error("no repeat");
    expect([grid.perMm, grid.slack]).toEqual([320, 1]);
    const { along } = grid.lattice;
    const longer = (by: number) => ({ ...grid, items: grid.items.map((one) => ({ ...one, h: along + by })) });
    // One step over the row is still on it; of two a whole row more.
    expect(latticeSpread(longer(1), grid.lattice).h).toEqual([along, along]);
    expect(latticeSpread(longer(2), grid.lattice).h).toEqual([2 * along, 2 * along]);
    expect(latticeSpread(longer(-2), grid.lattice).h).toEqual([along, along]);
  });
});

describe("what each piece takes of a strip", () => {
  test("is as much of it as its area or its width, and a strip holds all of it", () => {
    const grid = gridOf([{ size: [60, 10] }, { size: [34, 20] }, { size: [34, 20] }, { size: [34, 20] }]);
    const { list, tailY } = endOf(measuresOf(grid));
    const [strips, area] = list;
    expect(tailY).toBe(0);
    expect([...(area?.of ?? [])].map((one) => Math.round(one))).toEqual([60, 68, 68, 68]);
    // By hand: of 34 two go into 100, one beside 60: each half of a strip, as is the rest of that.
    expect([...(strips?.of ?? [])].reduce((a, b) => a + b, 0)).toBeCloseTo(350, 3);
    expect([strips?.on(1000), area?.on(1000), area?.on(500)]).toEqual([1, 1, 0.5]);
    expect(strips?.on(339)).toBe(0);
    expect(strips?.on(340)).toBeCloseTo(0.5, 6);
  });

  test("is measured on cloth that is wider by what the repeat saves at its side", () => {
    const columns: Partial<ClothProblem> = { repeat: { alongMm: 50, acrossMm: 30, match: "straight" } };
    // 50 and 10 to the next column of 30: 60 each; on 100 and 10 there is but one.
    const pieces = [0, 0, 0].map((): Sized => ({ size: [50, 20], start: { acrossMm: 0 } }));
    const { list } = endOf(measuresOf(gridOf(pieces, [{}], columns)));
    const [strips, area] = list;
    expect(strips?.on(1000)).toBe(1);
    expect(strips?.on(500)).toBeCloseTo(1, 6);
    expect(strips?.on(499)).toBe(0);
    expect([...(strips?.of ?? [])].map((one) => Math.round(one))).toEqual([200, 200, 200]);
    expect(area?.on(1000)).toBe(1);
    expect(area?.on(450)).toBeCloseTo(550 / 1100, 9);
    expect((area?.of[0] ?? 0) * 1100).toBeCloseTo(600 * 200, 6);
  });
});
