import { describe, expect, test } from "vitest";
import type { Bolt, BoltPlan, ClothCutPlan, ClothProblem, Piece, Placement } from "./index.ts";
import { verifyCloth } from "./index.ts";

/**
 * Plans laid by hand and cut with scissors, so that only the places of the pieces are looked at. Which of them are
 * right and which are wrong follows from the words of `problem.ts`, worked out by hand.
 */
const BOLT: Bolt = { id: "b", remnant: false, widthMm: 1000, lengthMm: 3000, flaws: [], costPerMm: 2 };
const PIECE: Omit<Piece, "id"> = {
  shade: "s",
  part: "face",
  widthMm: 400,
  lengthMm: 600,
  grain: "fixed",
  nap: "one-way",
};

const problemOf = (
  pieces: readonly (Partial<Piece> & { id: string })[],
  more: Partial<ClothProblem> = {},
): ClothProblem => ({
  id: "cloth",
  bolts: [BOLT],
  pieces: pieces.map((piece) => ({ ...PIECE, ...piece })),
  gapMm: 0,
  cutting: { kind: "free" },
  keep: { widthMm: 200, lengthMm: 200 },
  seed: 1,
  ...more,
});

const lying = (pieceId: string, xMm: number, yMm: number, more: Partial<Placement> = {}): Placement => ({
  pieceId,
  xMm,
  yMm,
  widthMm: 400,
  lengthMm: 600,
  turn: 0,
  ...more,
});

const endOf = (placements: readonly Placement[]) =>
  Math.max(0, ...placements.map(({ yMm, lengthMm }) => yMm + lengthMm));

/** What the check says of pieces that lie so, by bolt; length used and cost are right. */
function faultsOf(
  problem: ClothProblem,
  laid: Record<string, readonly Placement[]>,
  more: Partial<ClothCutPlan> = {},
): string[] {
  const bolts = Object.entries(laid).map(
    ([boltId, placements]): BoltPlan => ({
      boltId,
      usedMm: endOf(placements),
      placements,
      cuts: [],
      leaves: [],
      remnants: [],
    }),
  );
  const priceOf = (boltId: string) => problem.bolts.find(({ id }) => id === boltId)?.costPerMm ?? 0;
  const cost = bolts.reduce((sum, { boltId, usedMm }) => sum + usedMm * priceOf(boltId), 0);
  const bound = { cost: 0, which: "area" as const };
  return verifyCloth(problem, { status: "feasible", bolts, cost, bound, gap: 1, evaluations: 0, ...more });
}

describe("what is asked for", () => {
  const two = problemOf([{ id: "p" }, { id: "q" }]);
  const [p, q] = [lying("p", 0, 0), lying("q", 400, 0)];

  test("is cut once each, from a bolt that is there", () => {
    expect(faultsOf(two, { b: [p, q] })).toEqual([]);
    expect(faultsOf(two, { b: [p] })).toEqual(["q is cut 0 times"]);
    expect(faultsOf(two, { b: [p, q, lying("q", 400, 600)] })).toEqual(["q is cut 2 times"]);
    expect(faultsOf(two, { b: [p, q, lying("z", 0, 600)] })).toEqual(["z is cut but not asked for"]);
    expect(faultsOf(two, { b: [p], other: [q] })).toEqual(["there is no bolt other"]);
  });

  test("does not come off one bolt in two plans", () => {
    const bolt: BoltPlan = { boltId: "b", usedMm: 600, placements: [], cuts: [], leaves: [], remnants: [] };
    const bolts = [
      { ...bolt, placements: [p] },
      { ...bolt, placements: [q] },
    ];
    expect(faultsOf(two, {}, { bolts, cost: 2400 })).toEqual(["bolt b is cut twice"]);
  });
});

describe("a piece", () => {
  const one = problemOf([{ id: "p" }]);
  const outside = ["p lies outside bolt b"];

  test.each([
    [0, 0, []],
    [-0.01, 0, []],
    [-0.02, 0, outside],
    [0, -0.01, []],
    [0, -0.02, outside],
    [600, 0, []],
    [600.02, 0, outside],
    [0, 2400, []],
    [0, 2400.02, outside],
  ])("at %d across and %d along lies on the bolt, or is found outside", (xMm, yMm, faults) => {
    expect(faultsOf(one, { b: [lying("p", xMm, yMm)] })).toEqual(faults);
  });

  test("may lie anywhere along an endless bolt", () => {
    const { lengthMm: _, ...endless } = BOLT;
    expect(faultsOf({ ...one, bolts: [endless] }, { b: [lying("p", 0, 1e6)] })).toEqual([]);
  });

  test.each([
    [400, 600, true],
    [400.1, 600.1, true],
    [399.98, 600, false],
    [400.12, 600, false],
    [400, 599.98, false],
    [400, 600.12, false],
  ])("cut to %d × %d mm has its size, or is found: %s", (widthMm, lengthMm, isRight) => {
    const faults = faultsOf(one, { b: [lying("p", 0, 0, { widthMm, lengthMm })] });
    expect(faults).toEqual(isRight ? [] : ["p is not cut to its size"]);
  });

  const free = { grain: "free", nap: "either" } as const;
  const print = { repeat: { alongMm: 600, match: "straight" as const } };
  test.each<[string, Partial<Piece>, Partial<ClothProblem>, 0 | 90 | 180 | 270, string[]]>([
    ["by a quarter", free, {}, 90, []],
    ["by three quarters", free, {}, 270, []],
    ["by a quarter against its grain", { nap: "either" }, {}, 90, ["p is turned by a quarter"]],
    ["by three quarters against its grain", { nap: "either" }, {}, 270, ["p is turned by a quarter"]],
    ["by a quarter against the nap", { grain: "free" }, {}, 90, ["p is turned by a quarter"]],
    ["by a quarter on a print", free, print, 90, ["p is turned by a quarter"]],
    ["upside down", { nap: "either" }, {}, 180, []],
    ["upside down against the nap", {}, {}, 180, ["p lies upside down"]],
    ["not at all", {}, {}, 0, []],
  ])("turned %s", (_, piece, more, turn, faults) => {
    const size = turn % 180 === 0 ? {} : { widthMm: 600, lengthMm: 400 };
    const problem = problemOf([{ id: "p", ...piece }], more);
    expect(faultsOf(problem, { b: [lying("p", 0, 0, { turn, ...size })] })).toEqual(faults);
  });

  test("turned by a quarter is measured as it lies", () => {
    const problem = problemOf([{ id: "p", ...free }]);
    expect(faultsOf(problem, { b: [lying("p", 0, 0, { turn: 90 })] })).toEqual(["p is not cut to its size"]);
  });

  test.each([
    [400, 0, 50, 50, false],
    [399, 0, 50, 50, true],
    [0, 600, 1000, 20, false],
    [0, 599, 1000, 20, true],
    [100, 100, 5, 5, true],
  ])(
    "touches a flaw at %d, %d of %d × %d mm at the most with its edge, or is found: %s",
    (xMm, yMm, widthMm, lengthMm, isOn) => {
      const flaws = [{ xMm, yMm, widthMm, lengthMm }];
      const faults = faultsOf({ ...one, bolts: [{ ...BOLT, flaws }] }, { b: [lying("p", 0, 0)] });
      expect(faults).toEqual(isOn ? ["p lies on a flaw of bolt b"] : []);
    },
  );

  test("behind a flaw, or right of it, is clear of it", () => {
    const flaws = [{ xMm: 0, yMm: 0, widthMm: 1000, lengthMm: 50 }];
    const bolts = [{ ...BOLT, flaws }];
    expect(faultsOf({ ...one, bolts }, { b: [lying("p", 0, 50)] })).toEqual([]);
    expect(faultsOf({ ...one, bolts }, { b: [lying("p", 0, 49)] })).toHaveLength(1);
    const beside = [{ ...BOLT, flaws: [{ xMm: 0, yMm: 0, widthMm: 50, lengthMm: 900 }] }];
    expect(faultsOf({ ...one, bolts: beside }, { b: [lying("p", 50, 0)] })).toEqual([]);
    expect(faultsOf({ ...one, bolts: beside }, { b: [lying("p", 49, 0)] })).toHaveLength(1);
  });
});

describe("two pieces", () => {
  const pair = (gapMm: number) => problemOf([{ id: "p" }, { id: "q" }], { gapMm });
  const close = ["p and q lie too close on bolt b"];

  test.each([
    [0, 400, 0, []],
    [0, 399, 0, close],
    [0, 0, 600, []],
    [0, 0, 599, close],
    [10, 410, 0, []],
    [10, 409, 0, close],
    [10, 0, 610, []],
    [10, 0, 609, close],
    [10, 400, 605, close],
    [10, 410, 605, []],
  ])("%d mm apart: the other at %d, %d", (gapMm, xMm, yMm, faults) => {
    expect(faultsOf(pair(gapMm), { b: [lying("p", 0, 0), lying("q", xMm, yMm)] })).toEqual(faults);
  });

  test.each([
    [500, 0, []],
    [450, 0, close],
  ])("in any order of the list, the second left of the first", (xMm, yMm, faults) => {
    const laid = [lying("p", xMm, yMm), lying("q", 100, 0)];
    expect(faultsOf(pair(0), { b: laid })).toEqual(faults);
  });

  test("that overlap are found behind others that begin between them", () => {
    const problem = problemOf([{ id: "p", lengthMm: 2000 }, { id: "q" }, { id: "r" }]);
    const laid = [lying("r", 300, 700), lying("q", 500, 50), lying("p", 0, 0, { lengthMm: 2000 })];
    expect(faultsOf(problem, { b: laid })).toEqual(["p and r lie too close on bolt b"]);
  });
});

describe("on a repeat", () => {
  const straight = { alongMm: 320, acrossMm: 150, match: "straight" as const };
  const half = { alongMm: 320, acrossMm: 150, match: "half-drop" as const };
  const onBolt = { bolts: [{ ...BOLT, rowMm: 30, columnMm: 20 }] };
  const start = { alongMm: 40, acrossMm: 10 };

  // Columns at 20, 170, 320 …, each begun 10 right of one; rows at 30, 350 …, each begun 40 below one.
  test.each<[number, number, ClothProblem["repeat"], string[]]>([
    [30, 70, straight, []],
    [30, 390, straight, []],
    [180, 70, straight, []],
    [30.05, 70.05, straight, []],
    [31, 70, straight, ["p lies 1.0 mm beside its column of the repeat"]],
    [29, 70, straight, ["p lies 1.0 mm beside its column of the repeat"]],
    [30, 72, straight, ["p lies 2.0 mm from its row of the repeat"]],
    [30, 68, straight, ["p lies 2.0 mm from its row of the repeat"]],
    [30, 230, straight, ["p lies 160.0 mm from its row of the repeat"]],
    [30, 70, half, []],
    [180, 230, half, []],
    [330, 70, half, []],
    [330, 390, half, []],
    [180, 70, half, ["p lies 160.0 mm from its row of the repeat"]],
    [330, 230, half, ["p lies 160.0 mm from its row of the repeat"]],
  ])("a piece at %d, %d", (xMm, yMm, repeat, faults) => {
    const problem = problemOf([{ id: "p", start }], { ...onBolt, ...(repeat ? { repeat } : {}) });
    expect(faultsOf(problem, { b: [lying("p", xMm, yMm)] })).toEqual(faults);
  });

  test("a piece without a place in it may lie anywhere, one with a row alone beside any column", () => {
    const anywhere = problemOf([{ id: "p" }], { ...onBolt, repeat: half });
    expect(faultsOf(anywhere, { b: [lying("p", 13, 17)] })).toEqual([]);
    const row = problemOf([{ id: "p", start: { alongMm: 40 } }], { ...onBolt, repeat: half });
    expect(faultsOf(row, { b: [lying("p", 13, 70)] })).toEqual([]);
    expect(faultsOf(row, { b: [lying("p", 180, 230)] })).toHaveLength(1);
    const column = problemOf([{ id: "p", start: { acrossMm: 10 } }], { ...onBolt, repeat: half });
    expect(faultsOf(column, { b: [lying("p", 180, 17)] })).toEqual([]);
    expect(faultsOf(column, { b: [lying("p", 13, 17)] })).toHaveLength(1);
  });

  test("without columns of its own a piece keeps to no column", () => {
    const repeat = { alongMm: 320, match: "half-drop" as const };
    const problem = problemOf([{ id: "p", start }], { ...onBolt, repeat });
    expect(faultsOf(problem, { b: [lying("p", 180, 70)] })).toEqual([]);
  });

  test("in a half drop between widths every second width is half a row on", () => {
    const repeat = { alongMm: 320, match: "half-drop" as const };
    const widthOf = (index: number) =>
      problemOf([{ id: "p", start: { alongMm: 40 }, join: { group: "j", index } }], { ...onBolt, repeat });
    const at = (index: number, yMm: number) => faultsOf(widthOf(index), { b: [lying("p", 0, yMm)] });
    expect(at(0, 70)).toEqual([]);
    expect(at(1, 230)).toEqual([]);
    expect(at(2, 70)).toEqual([]);
    expect(at(1, 70)).toHaveLength(1);
    expect(at(2, 230)).toHaveLength(1);
  });
});

describe("widths that are joined", () => {
  const joined = (match: "straight" | "half-drop") => {
    const pieces = [0, 1, 2].map((index) => ({ id: `w${index}`, join: { group: "j", index } }));
    return problemOf(pieces, { repeat: { alongMm: 320, match }, bolts: [{ ...BOLT, rowMm: 30 }] });
  };
  const tops = (match: "straight" | "half-drop", ys: readonly [number, number, number]) =>
    faultsOf(joined(match), { b: ys.map((yMm, n) => lying(`w${n}`, n === 1 ? 500 : 0, yMm)) });

  test("show the same rows at their tops, wherever the first begins", () => {
    expect(tops("straight", [13, 333, 653])).toEqual([]);
    expect(tops("straight", [13, 337, 653])).toEqual(["w1 does not match w0: 4.0 mm off"]);
    expect(tops("straight", [13, 333, 648])).toEqual(["w2 does not match w0: 5.0 mm off"]);
  });

  test("are half a row on from width to width in a half drop", () => {
    expect(tops("half-drop", [13, 173, 653])).toEqual([]);
    expect(tops("half-drop", [13, 333, 653])).toEqual(["w1 does not match w0: 160.0 mm off"]);
  });

  test("match across bolts whose rows begin elsewhere, and need not on plain cloth or in two joins", () => {
    const bolts = [
      { ...BOLT, rowMm: 30 },
      { ...BOLT, id: "c", rowMm: 100 },
    ];
    const problem = { ...joined("straight"), bolts };
    const laid = (yMm: number) => ({
      b: [lying("w0", 0, 13), lying("w2", 0, 653)],
      c: [lying("w1", 0, yMm)],
    });
    expect(faultsOf(problem, laid(83))).toEqual([]);
    expect(faultsOf(problem, laid(13))).toHaveLength(1);
    const { repeat: _, ...plain } = problem;
    expect(faultsOf(plain, laid(13))).toEqual([]);
    const apart = problem.pieces.map((piece, index) => ({ ...piece, join: { group: `j${index}`, index } }));
    expect(faultsOf({ ...problem, pieces: apart }, laid(13))).toEqual([]);
  });
});

describe("dye lots", () => {
  const bolts = [
    { ...BOLT, id: "b", lot: "x" },
    { ...BOLT, id: "c", lot: "x" },
    { ...BOLT, id: "d" },
  ];
  const group = problemOf([{ id: "p", lotGroup: "g" }, { id: "q", lotGroup: "g" }, { id: "r" }], { bolts });
  const [p, q, r] = [lying("p", 0, 0), lying("q", 0, 600), lying("r", 0, 1200)];

  test("the pieces of a group come from one, others from any", () => {
    expect(faultsOf(group, { b: [p], c: [q], d: [r] })).toEqual([]);
    expect(faultsOf(group, { b: [p], d: [q, r] })).toEqual(["g comes from 2 dye lots"]);
    // A bolt that is not there is none of them.
    expect(faultsOf(group, { b: [p], gone: [q], d: [r] })).toEqual([
      "there is no bolt gone",
      "g comes from 2 dye lots",
    ]);
    const own = { ...group, bolts: bolts.map(({ lot: _, ...bolt }) => bolt) };
    expect(faultsOf(own, { b: [p], c: [q, r] })).toEqual(["g comes from 2 dye lots"]);
    expect(faultsOf(own, { b: [p, q], c: [r] })).toEqual([]);
  });

  test("a group that is bound comes from its lot, or the plan says from another", () => {
    const bound = { ...group, boundLots: { g: "x" } };
    expect(faultsOf(bound, { b: [p, q], d: [r] })).toEqual([]);
    expect(faultsOf(bound, { d: [p, q, r] })).toEqual([
      "g comes from another dye lot than what is cut of it, x",
    ]);
    expect(faultsOf(bound, { d: [p, q, r] }, { otherLots: [{ lotGroup: "g", lot: "x" }] })).toEqual([]);
    expect(faultsOf(bound, { d: [p, q, r] }, { otherLots: [{ lotGroup: "h", lot: "x" }] })).toHaveLength(1);
  });
});

describe("a piece that is held", () => {
  const held = [{ pieceId: "p", boltId: "b", xMm: 100, yMm: 200, turn: 0 as const }];
  const turns = problemOf([{ id: "p", nap: "either" }], {
    held,
    bolts: [BOLT, { ...BOLT, id: "c" }],
  });
  const moved = ["p does not lie where it was laid"];

  test.each([
    [100, 200, []],
    [100.05, 199.95, []],
    [100.06, 200, moved],
    [99.94, 200, moved],
    [100, 200.06, moved],
    [100, 199.94, moved],
  ])("at %d, %d", (xMm, yMm, faults) => {
    expect(faultsOf(turns, { b: [lying("p", xMm, yMm)] })).toEqual(faults);
  });

  test("stays on its bolt and as it was turned, or the plan says that it could not", () => {
    expect(faultsOf(turns, { c: [lying("p", 100, 200)] })).toEqual(moved);
    expect(faultsOf(turns, { b: [lying("p", 100, 200, { turn: 180 })] })).toEqual(moved);
    const notHeld = [{ pieceId: "p", reason: "it lies on a flaw" }];
    expect(faultsOf(turns, { c: [lying("p", 100, 200)] }, { notHeld })).toEqual([]);
    const other = [{ pieceId: "q", reason: "it lies on a flaw" }];
    expect(faultsOf(turns, { c: [lying("p", 100, 200)] }, { notHeld: other })).toEqual(moved);
  });
});

describe("the sums", () => {
  const one = problemOf([{ id: "p" }]);
  const bolt: BoltPlan = {
    boltId: "b",
    usedMm: 600,
    placements: [lying("p", 0, 0)],
    cuts: [],
    leaves: [],
    remnants: [],
  };
  const sums = (usedMm: number, more: Partial<ClothCutPlan>) =>
    faultsOf(one, {}, { bolts: [{ ...bolt, usedMm }], ...more });
  const boundOf = (cost: number) => ({ bound: { cost, which: "area" as const } });

  test("the length used is that of the pieces, and costs what it costs", () => {
    expect(sums(600, { cost: 1200 })).toEqual([]);
    expect(sums(600.01, { cost: 1200.02 })).toEqual([]);
    expect(sums(610, { cost: 1220 })).toEqual(["the pieces on bolt b do not end at the length used"]);
    expect(sums(590, { cost: 1180 })).toEqual([
      "p lies beyond the length used of b",
      "the pieces on bolt b do not end at the length used",
    ]);
    expect(sums(600, { cost: 1199 })).toEqual(["the lengths used do not come to the cost of the plan"]);
    expect(sums(600, { cost: 1201 })).toEqual(["the lengths used do not come to the cost of the plan"]);
  });

  test("nothing costs less than its bound, and only what costs no more than it is called optimal", () => {
    expect(sums(600, { cost: 1200, ...boundOf(1200) })).toEqual([]);
    expect(sums(600, { cost: 1200, ...boundOf(1201) })).toEqual(["the plan costs less than its bound"]);
    expect(sums(600, { cost: 1200, ...boundOf(1200), status: "optimal" })).toEqual([]);
    expect(sums(600, { cost: 1200, ...boundOf(1199), status: "optimal" })).toEqual([
      "the plan is called optimal and is not",
    ]);
    expect(sums(600, { cost: 1200, ...boundOf(1200.001) })).toEqual([]);
    expect(sums(600, { cost: 1200, ...boundOf(1200.002) })).toEqual(["the plan costs less than its bound"]);
    expect(sums(600, { cost: 1200, ...boundOf(1199.999), status: "optimal" })).toEqual([]);
    expect(sums(600, { cost: 1200, ...boundOf(1199.998), status: "optimal" })).toHaveLength(1);
    // Of hardly any cost it is a millionth itself.
    const cheap = { ...one, bolts: [{ ...BOLT, costPerMm: 1e-4 }] };
    const of = (cost: number) => faultsOf(cheap, {}, { bolts: [bolt], cost, ...boundOf(0.06) });
    expect([of(0.06), of(0.06 + 9e-7), of(0.06 - 9e-7)]).toEqual([[], [], []]);
    expect(of(0.06 + 2e-6)).toHaveLength(1);
    // A part in a million is rounding, more is not.
    expect(sums(600, { cost: 1200.001, ...boundOf(1200) })).toEqual([]);
    expect(sums(600, { cost: 1200.002, ...boundOf(1200) })).toHaveLength(1);
  });
});
