import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { ANY_LOT, columnStart, leadTo, modulo, NO_LOT, rowStart, stepGridOf } from "./grid.ts";
import type { Bolt, ClothProblem, Piece } from "./index.ts";

const BOLT: Bolt = { id: "b", remnant: false, widthMm: 1400, flaws: [], costPerMm: 3 };
const PIECE: Piece = {
  id: "p",
  shade: "s",
  part: "face",
  widthMm: 600,
  lengthMm: 900,
  grain: "fixed",
  nap: "one-way",
};
const problemOf = (piece: Partial<Piece>, bolt: Partial<Bolt> = {}, more: Partial<ClothProblem> = {}) => ({
  id: "cloth",
  bolts: [{ ...BOLT, ...bolt }],
  pieces: [{ ...PIECE, ...piece }],
  gapMm: 0,
  cutting: { kind: "free" as const },
  keep: { widthMm: 100, lengthMm: 100 },
  seed: 1,
  ...more,
});
const gridOf = (...given: Parameters<typeof problemOf>) => stepGridOf(problemOf(...given));
const itemOf = (...given: Parameters<typeof problemOf>) => gridOf(...given).items[0];
const boltOf = (...given: Parameters<typeof problemOf>) => gridOf(...given).bolts[0];
const repeat = (alongMm: number, acrossMm?: number, match: "straight" | "half-drop" = "straight") => ({
  repeat: { alongMm, match, ...(acrossMm === undefined ? {} : { acrossMm }) },
});

describe("steps in a millimetre", () => {
  // The coarsest of 10, 20, 40 … 320 in which all is whole: an eighth of an inch is 3.175 mm, a thirty-second 0.79375.
  test.each<[number, ...Parameters<typeof problemOf>]>([
    [10, {}],
    [10, { widthMm: 25.4 }],
    [20, { widthMm: 600.05 }],
    [40, { lengthMm: 3.175 }],
    [80, { lengthMm: 0.0125 }],
    [160, { lengthMm: 0.79375 }],
    [320, { widthMm: 100 / 3 }],
    [20, {}, { widthMm: 1400.05 }],
    [10, {}, { rowMm: 0.05, columnMm: 0.05 }],
    [20, {}, { rowMm: 0.05 }, repeat(320)],
    [20, {}, { columnMm: 0.05 }, repeat(320)],
    [20, {}, {}, repeat(320.1)],
    [20, {}, {}, repeat(320, 150.05)],
    [20, { start: { alongMm: 0.05 } }, {}, repeat(320)],
    [20, { start: { acrossMm: 0.05 } }, {}, repeat(320, 150)],
    [10, { start: { alongMm: 0.05, acrossMm: 0.05 } }],
    [10, { widthMm: 600 + 1e-8 }],
  ])("are %d", (perMm, ...given) => {
    expect(gridOf(...given).perMm).toBe(perMm);
    expect(gridOf(...given).slack).toBe(perMm === 320 ? 1 : 0);
  });
});

describe("sizes in steps", () => {
  test("hold the gap; those of cloth are rounded down, those of pieces up, rounding left aside", () => {
    expect(itemOf({})).toMatchObject({ w: 6000, h: 9000, turns: false });
    expect(itemOf({}, {}, { gapMm: 2 })).toMatchObject({ w: 6020, h: 9020 });
    expect(boltOf({}, { lengthMm: 2000 }, { gapMm: 2 })).toMatchObject({
      w: 14020,
      h: 20020,
      costPerStep: 0.3,
    });
    expect(boltOf({})).toMatchObject({ w: 14000, h: Number.POSITIVE_INFINITY });
    // On the finest grid, of 320 steps, lengths within 1.6 steps are the same: a third of a hundred is 10,666.7 steps.
    expect(itemOf({ widthMm: 100 / 3 })?.w).toBe(10_666);
    expect(boltOf({ widthMm: 100 / 3 }, { lengthMm: 100 / 3, widthMm: 200 / 3 })).toMatchObject({
      w: 21_334,
      h: 10_668,
    });
    expect(gridOf({}, {}, { gapMm: 0.24 }).gap).toBe(3);
    expect(gridOf({}, {}, { tableMm: 1200, gapMm: 2 }).longestLayer).toBe(12020);
    expect(gridOf({}).longestLayer).toBe(Number.POSITIVE_INFINITY);
  });

  test("are no thinner than a tenth of a millimetre", () => {
    expect(itemOf({ widthMm: 0.01 })?.w).toBe(itemOf({ widthMm: 0.01, lengthMm: 0.1 })?.h);
    expect(itemOf({ widthMm: 0.0125 })?.w).toBe(8);
  });

  test("turn on plain cloth where grain and nap allow it and it makes a difference", () => {
    const free = { grain: "free", nap: "either" } as const;
    expect(itemOf(free)?.turns).toBe(true);
    expect(itemOf({ ...free, nap: "one-way" })?.turns).toBe(false);
    expect(itemOf({ ...free, grain: "fixed" })?.turns).toBe(false);
    expect(itemOf({ ...free, widthMm: 900 })?.turns).toBe(false);
    expect(itemOf(free, {}, repeat(320))?.turns).toBe(false);
  });

  test("of flaws are rounded outwards, within the cloth; what is beside it is none", () => {
    const flawsOf = (xMm: number, yMm: number, widthMm: number, lengthMm: number) =>
      boltOf({}, { lengthMm: 2000, flaws: [{ xMm, yMm, widthMm, lengthMm }] })?.flaws;
    expect(flawsOf(10.04, 20.04, 5, 6)).toEqual([{ x1: 100, x2: 151, y1: 200, y2: 261 }]);
    expect(flawsOf(-5, -6, 10, 10)).toEqual([{ x1: 0, x2: 50, y1: 0, y2: 40 }]);
    expect(flawsOf(1395, 1995, 10, 10)).toEqual([{ x1: 13950, x2: 14000, y1: 19950, y2: 20000 }]);
    expect(flawsOf(1400, 0, 10, 10)).toEqual([]);
    expect(flawsOf(0, 2000, 10, 10)).toEqual([]);
    expect(flawsOf(-20, 0, 20, 10)).toEqual([]);
    expect(flawsOf(0, -20, 20, 20)).toEqual([]);
  });
});

describe("places in the repeat", () => {
  test("are counted within one repeat, and are none on plain cloth or without a column", () => {
    const start = { alongMm: 700, acrossMm: 370 };
    expect(itemOf({ start }, {}, repeat(320, 150))).toMatchObject({ phaseY: 600, phaseX: 700, join: -1 });
    expect(itemOf({ start }, {}, repeat(320))).toMatchObject({ phaseY: 600, phaseX: -1 });
    expect(itemOf({ start })).toMatchObject({ phaseY: -1, phaseX: -1 });
    expect(itemOf({ start: { acrossMm: 370 } }, {}, repeat(320, 150))).toMatchObject({
      phaseY: -1,
      phaseX: 700,
    });
    expect(itemOf({ start: { alongMm: 700 } }, {}, repeat(320, 150))).toMatchObject({
      phaseY: 600,
      phaseX: -1,
    });
  });

  test("in a half drop are half a repeat on with every column taken off and every width joined", () => {
    const at = (acrossMm: number, index?: number) =>
      itemOf(
        { start: { alongMm: 0, acrossMm }, ...(index === undefined ? {} : { join: { group: "j", index } }) },
        {},
        repeat(320, 150, "half-drop"),
      )?.phaseY;
    expect([at(0), at(149), at(150), at(299), at(300), at(450)]).toEqual([0, 0, 1600, 1600, 0, 1600]);
    expect([at(0, 0), at(0, 1), at(0, 2), at(150, 1)]).toEqual([0, 1600, 0, 0]);
    const straight = itemOf({ start: { alongMm: 0, acrossMm: 150 } }, {}, repeat(320, 150))?.phaseY;
    expect(straight).toBe(0);
  });

  test("of joined widths that begin anywhere are those of their group", () => {
    const join = { group: "j", index: 1 };
    expect(itemOf({ join }, {}, repeat(320))).toMatchObject({ join: 0, phaseY: 0 });
    expect(itemOf({ join }, {}, repeat(320, undefined, "half-drop"))).toMatchObject({
      join: 0,
      phaseY: 1600,
    });
    expect(itemOf({ join, start: { alongMm: 5 } }, {}, repeat(320))).toMatchObject({ join: -1, phaseY: 50 });
    expect(itemOf({ join })).toMatchObject({ join: -1, phaseY: -1 });
    expect(gridOf({ join }, {}, repeat(320)).joins).toBe(1);
    expect(gridOf({ join }).joins).toBe(0);
  });

  test("are there only where a piece has one", () => {
    expect(gridOf({}, {}, repeat(320)).lattice).toBeUndefined();
    expect(gridOf({ start: { alongMm: 0 } }, {}, repeat(320)).lattice).toEqual({
      along: 3200,
      across: 0,
      half: false,
    });
    expect(gridOf({ start: { acrossMm: 0 } }, {}, repeat(320, 15, "half-drop")).lattice).toEqual({
      along: 3200,
      across: 150,
      half: true,
    });
    expect(gridOf({ start: { alongMm: 0 } }, {}, repeat(0.1)).lattice?.along).toBe(2);
  });

  test("are reached from any place at the first that matches, found step by step", () => {
    const place = fc.record({
      x: fc.nat(60),
      y: fc.nat(60),
      alongMm: fc.nat(9),
      acrossMm: fc.nat(9),
      rowMm: fc.nat(9),
      columnMm: fc.nat(9),
      isHalf: fc.boolean(),
      hasColumn: fc.boolean(),
    });
    fc.assert(
      fc.property(fc.array(place, { minLength: 20, maxLength: 20 }), (places) => {
        for (const { x, y, alongMm, acrossMm, rowMm, columnMm, isHalf, hasColumn } of places) {
          const start = hasColumn ? { alongMm, acrossMm } : { alongMm };
          const grid = gridOf(
            { start },
            { rowMm, columnMm },
            repeat(6, 4, isHalf ? "half-drop" : "straight"),
          );
          const [bolt] = grid.bolts;
          if (bolt === undefined) throw new Error("no bolt");
          // Ten steps a millimetre; columns from `columnMm` on every 4 mm, each half a row on in a half drop.
          let right = 10 * x;
          while (hasColumn && modulo(right - 10 * (columnMm + acrossMm), 40) !== 0) right++;
          expect(columnStart(grid, bolt, 0, 10 * x)).toBe(right);
          const columns = hasColumn ? (right - 10 * (columnMm + acrossMm)) / 40 : 0;
          const drop = isHalf && Math.abs(columns) % 2 === 1 ? 30 : 0;
          let below = 10 * y;
          while (modulo(below - 10 * (rowMm + alongMm) - drop, 60) !== 0) below++;
          expect(rowStart(grid, bolt, 0, { x: right, y: 10 * y })).toBe(below);
        }
      }),
      { numRuns: 15 },
    );
  });

  test("hardly passed count as reached, within the rounding of the finest grid", () => {
    expect([leadTo(7, 10, 0), leadTo(-3, 10, 0), leadTo(10, 10, 0)]).toEqual([7, 7, 0]);
    expect([leadTo(9, 10, 1), leadTo(8, 10, 1), leadTo(1, 10, 1)]).toEqual([0, 8, 1]);
    expect([modulo(-1, 5), modulo(7, 5), modulo(5, 5)]).toEqual([4, 2, 0]);
  });
});

describe("dye lots", () => {
  const of = (bolts: readonly Partial<Bolt>[], more: Partial<ClothProblem> = {}) =>
    stepGridOf({
      ...problemOf({}, {}, more),
      bolts: bolts.map((bolt, n) => ({ ...BOLT, id: `b${n}`, ...bolt })),
      pieces: [
        { ...PIECE, lotGroup: "g" },
        { ...PIECE, id: "q", lotGroup: "h" },
        { ...PIECE, id: "r", lotGroup: "g" },
        { ...PIECE, id: "t" },
      ],
    });

  test("matter where there are two, or a group is bound; a bolt without one is a lot of its own", () => {
    expect(of([{}]).lotAreas).toEqual([]);
    expect(of([{ lot: "x" }, { lot: "x" }]).lotAreas).toEqual([]);
    expect(of([{}]).items.map(({ lotGroup }) => lotGroup)).toEqual([-1, -1, -1, -1]);
    const two = of([{}, { lot: "x" }, { lot: "x" }, {}]);
    expect(two.bolts.map(({ lot }) => lot)).toEqual([0, 1, 1, 2]);
    expect(two.items.map(({ lotGroup }) => lotGroup)).toEqual([0, 1, 0, -1]);
    expect(two.lotAreas).toEqual([2 * 6000 * 9000, 6000 * 9000]);
    expect(two.boundLots).toEqual([ANY_LOT, ANY_LOT]);
    const bound = of([{ lot: "x" }], { boundLots: { g: "x", h: "gone" } });
    expect(bound.boundLots).toEqual([0, NO_LOT]);
    // A lot that is called as a bolt is, is not that bolt.
    expect(of([{ id: "x" }], { boundLots: { g: "x" } }).boundLots).toEqual([NO_LOT, ANY_LOT]);
  });
});

describe("the step of lengths", () => {
  /** The greatest that divides all of them. */
  const divisor = (...steps: number[]) => {
    let most = Math.max(...steps);
    while (steps.some((one) => one % most !== 0)) most--;
    return most;
  };

  test("is what all lengths, rows, gaps and ends of flaws have in common", () => {
    expect(gridOf({}).stepY).toBe(9000);
    expect(gridOf({}, {}, { gapMm: 2 }).stepY).toBe(divisor(9000, 20));
    const free = { grain: "free", nap: "either" } as const;
    expect(gridOf(free).stepY).toBe(divisor(9000, 6000));
    const start = { alongMm: 4 };
    expect(gridOf({ start }, {}, repeat(320)).stepY).toBe(divisor(9000, 1600, 40));
    expect(gridOf({ start: { alongMm: 0 } }, {}, repeat(300)).stepY).toBe(divisor(9000, 1500));
    expect(gridOf({ start: { alongMm: 0 } }, { rowMm: 7 }, repeat(300)).stepY).toBe(divisor(9000, 1500, 70));
    expect(gridOf({ start: { alongMm: 0 } }, { rowMm: -7 }, repeat(300)).stepY).toBe(divisor(9000, 1500, 70));
    expect(gridOf({}, { rowMm: 7 }).stepY).toBe(9000);
    expect(gridOf({}, { flaws: [{ xMm: 0, yMm: 33, widthMm: 9, lengthMm: 7 }] }).stepY).toBe(
      divisor(9000, 400),
    );
    expect(stepGridOf({ ...problemOf({}), pieces: [] }).stepY).toBe(1);
  });
});
