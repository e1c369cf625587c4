import { describe, expect, test } from "vitest";
import { givenCloth, type Sized } from "../../../test/cutting/given-cloth.ts";
import { stepGridOf } from "./grid.ts";
import {
  type Bolt,
  type ClothAnswer,
  type ClothCutPlan,
  type ClothProblem,
  ClothSearch,
  type HeldPiece,
  planByHand,
  solveCloth,
  startClothSearch,
  verifyCloth,
} from "./index.ts";
import { layOutBolts } from "./lay-out.ts";
import { packed } from "./packing.ts";

const BOLT: Bolt = { id: "b", remnant: false, widthMm: 1000, flaws: [], costPerMm: 1 };
function problemOf(pieces: readonly Sized[], more: Partial<ClothProblem> = {}): ClothProblem {
  return givenCloth(pieces, [BOLT], { keep: { widthMm: 200, lengthMm: 200 }, ...more });
}
function planOf(answer: ClothAnswer): ClothCutPlan {
  if (!("bolts" in answer)) throw new Error(JSON.stringify(answer));
  return answer;
}

describe("what makes no sense", () => {
  const one: Sized[] = [{ size: [100, 100] }];
  test.each<[string, ClothProblem]>([
    ["invalid piece widthMm: 0", problemOf([{ size: [0, 100] }])],
    ["invalid piece lengthMm: NaN", problemOf([{ size: [100, Number.NaN] }])],
    ["invalid bolt widthMm: -1", problemOf(one, { bolts: [{ ...BOLT, widthMm: -1 }] })],
    ["invalid bolt lengthMm: 0", problemOf(one, { bolts: [{ ...BOLT, lengthMm: 0 }] })],
    ["invalid bolt costPerMm: -1", problemOf(one, { bolts: [{ ...BOLT, costPerMm: -1 }] })],
    ["invalid gapMm: -1", problemOf(one, { gapMm: -1 })],
    ["invalid repeat alongMm: 0", problemOf(one, { repeat: { alongMm: 0, match: "straight" } })],
    ["invalid ids: one is given twice", problemOf([...one, ...one].map((piece) => ({ ...piece, id: "p" })))],
    ["invalid ids: one is given twice", problemOf(one, { bolts: [BOLT, BOLT] })],
    ["invalid bolts: more than one is endless", problemOf(one, { bolts: [BOLT, { ...BOLT, id: "other" }] })],
  ])("%s", (words, problem) => {
    expect(() => new ClothSearch(problem)).toThrow(words);
  });

  test("does not lie at nothing: cloth that is free, no gap", () => {
    expect(planOf(solveCloth(problemOf(one, { bolts: [{ ...BOLT, costPerMm: 0 }] }), 10))).toMatchObject({
      status: "optimal",
      cost: 0,
      gap: 0,
    });
  });
});

describe("an answer", () => {
  // By hand: nothing of 600 lies beside another, so they lie below each other.
  const three = problemOf([{ size: [600, 500] }, { size: [600, 400] }, { size: [600, 300] }]);

  test("proved at once needs no search", () => {
    const search = new ClothSearch(three);
    expect(search.done).toBe(true);
    expect(search.cost).toBe(1200);
    expect(search.lowerBound).toEqual({ cost: 1200, which: "wide" });
    expect(search.improve(1000)).toBe(false);
    expect(planOf(search.answer())).toMatchObject({ status: "optimal", cost: 1200, gap: 0 });
  });

  // By hand: 2 · 50 mm of the wide cloth at 3, and 6 · 100 mm of the narrow one at 1; all from the wide one 2,100.
  test("takes from a dear leftover what nothing else is wide enough for, and no more", () => {
    const wide: Sized[] = [{ size: [140, 50] }, { size: [140, 50] }];
    const narrow = Array.from({ length: 6 }, (): Sized => ({ size: [90, 100] }));
    const bolts = [{ widthMm: 150, costPerMm: 3, lengthMm: 1000 }, {}];
    const plan = planOf(solveCloth(givenCloth([...wide, ...narrow], bolts), 2000));
    expect(plan).toMatchObject({ cost: 900, status: "optimal" });
  });

  test("that is not proved says how far it may be from the best, and what became of the search", () => {
    const sizes = [430, 370, 290, 310, 530, 230, 470, 270, 350, 410, 590, 250].map((w, n) => ({
      size: [w, 300 + 37 * n] as const,
    }));
    const search = new ClothSearch(problemOf(sizes, { cutting: { kind: "straight", stages: 5 } }));
    const asked = search.evaluations;
    let looks = 0;
    search.improve(50, () => ++looks > 3);
    expect(looks).toBe(4);
    for (const status of ["feasible", "stopped"] as const) {
      const plan = planOf(search.answer(status));
      expect(plan.status).toBe(status);
      expect(plan.gap).toBeCloseTo((plan.cost - plan.bound.cost) / plan.bound.cost, 12);
      expect(plan.gap).toBeGreaterThan(0);
      expect(plan.evaluations).toBe(search.evaluations);
    }
    expect(planOf(search.answer()).status).toBe("feasible");
    const before = search.evaluations;
    expect(before).toBeGreaterThanOrEqual(asked);
    expect(search.improve(200)).toBe(true);
    expect(search.evaluations).toBeGreaterThanOrEqual(before + 200);
    expect(search.evaluations).toBeLessThanOrEqual(before + 400);
  });

  test("names the pieces that found no place where cloth is too short in its shape", () => {
    // 600 × 700 and 600 × 300 fill 1000 × 1000 in area and more no way: 500 × 400 finds no place beside them.
    const bolts = [{ ...BOLT, lengthMm: 1000 }];
    const problem = problemOf([{ size: [600, 700] }, { size: [500, 400] }, { size: [600, 290] }], {
      bolts,
      cutting: { kind: "straight", stages: 5 },
    });
    const answer = solveCloth(problem, 300);
    expect(["not-found", "infeasible"]).toContain(answer.status);
    if (answer.status === "not-found") {
      expect(answer.reason).toBe("no place was found for all pieces");
      expect(answer.pieceIds.length).toBeGreaterThan(0);
      expect(answer.pieceIds.length).toBeLessThan(3);
    }
  });

  test("that does not pass the check is withheld, with the reasons", () => {
    const search = new ClothSearch(three);
    expect(search.answer().status).toBe("optimal");
    // As if a piece had come out too short.
    const [first] = three.pieces;
    if (first === undefined) throw new Error("no piece");
    const { lengthMm } = first;
    first.lengthMm = 510;
    expect(search.answer()).toEqual({ status: "withheld", reasons: ["p0 is not cut to its size"] });
    first.lengthMm = lengthMm;
  });

  test("of no pieces is an empty plan", () => {
    expect(solveCloth(problemOf([]), 10)).toMatchObject({ status: "optimal", cost: 0, bolts: [], gap: 0 });
  });
});

describe("a plan of before", () => {
  // Two layers of 500: a best plan that the first order of the search misses is handed in.
  const sizes = [300, 340, 360, 420, 280, 300].map((w) => ({ size: [w, 500] as const }));
  const problem = problemOf(sizes, { cutting: { kind: "straight", stages: 5 } });
  const at = (n: number, xMm: number, yMm: number) => ({
    pieceId: `p${n}`,
    xMm,
    yMm,
    widthMm: sizes[n]?.size[0] ?? 0,
    lengthMm: 500,
    turn: 0 as const,
  });
  const known = [
    {
      boltId: "b",
      placements: [
        at(0, 0, 0),
        at(1, 300, 0),
        at(2, 640, 0),
        at(3, 0, 500),
        at(4, 420, 500),
        at(5, 700, 500),
      ],
    },
  ];

  test("is taken where it is cheaper and can still be cut", () => {
    expect(planByHand(problem, known).faults).toEqual([]);
    expect(startClothSearch(problem, known).cost).toBe(1000);
    const apart = known.map(({ boltId, placements }) => ({
      boltId,
      placements: placements.map((one) => (one.pieceId === "p5" ? { ...one, xMm: 690 } : one)),
    }));
    const cost = new ClothSearch(problem).cost;
    expect(new ClothSearch(problem, apart).cost).toBe(cost);
    expect(new ClothSearch(problem, [{ boltId: "gone", placements: known[0]?.placements ?? [] }]).cost).toBe(
      cost,
    );
    expect(new ClothSearch(problem, []).cost).toBe(cost);
  });

  test("is not taken where it costs more", () => {
    const one = problemOf([{ size: [400, 500] }, { size: [400, 500] }]);
    const wasteful = [
      {
        boltId: "b",
        placements: [
          { ...at(0, 0, 0), widthMm: 400 },
          { ...at(1, 0, 500), widthMm: 400 },
        ],
      },
    ];
    expect(startClothSearch(one, wasteful).cost).toBe(500);
  });
});

describe("what is cut already binds the rest to its lot", () => {
  const bolts: Bolt[] = [
    { ...BOLT, id: "x", lot: "x", lengthMm: 600, costPerMm: 2 },
    { ...BOLT, id: "y", lot: "y" },
  ];
  const two = (more: Partial<ClothProblem>) =>
    problemOf(
      [
        { size: [900, 300], lotGroup: "g" },
        { size: [900, 300], lotGroup: "g" },
        { size: [900, 200], lotGroup: "h" },
      ],
      { bolts, ...more },
    );
  const boltsOf = (problem: ClothProblem) => {
    const search = startClothSearch(problem);
    search.improve(200);
    const plan = planOf(search.answer());
    expect(verifyCloth(problem, plan)).toEqual([]);
    expect(search.cost).toBeCloseTo(plan.cost, 9);
    expect(search.lowerBound.cost).toBeLessThanOrEqual(plan.cost);
    expect(search.evaluations).toBe(plan.evaluations);
    const where = plan.bolts.map(
      ({ boltId, placements }) => `${boltId} ${placements.map((p) => p.pieceId).sort()}`,
    );
    return { where: where.sort(), otherLots: plan.otherLots };
  };

  test("where it has cloth enough, though dearer", () => {
    expect(boltsOf(two({ boundLots: { g: "x" } }))).toEqual({
      where: ["x p0,p1", "y p2"],
      otherLots: undefined,
    });
    expect(boltsOf(two({}))).toEqual({ where: ["y p0,p1,p2"], otherLots: undefined });
    // A group of which no piece is left to cut binds nothing.
    expect(boltsOf(two({ boundLots: { k: "x" } }))).toEqual({ where: ["y p0,p1,p2"], otherLots: undefined });
  });

  test("else it comes from another, and the plan says which group does", () => {
    // Lot x holds either, not both: the one that finds no place gives way.
    const h = { lotGroup: "h", lot: "x" };
    expect(boltsOf(two({ boundLots: { g: "x", h: "x" } }))).toEqual({
      where: ["x p0,p1", "y p2"],
      otherLots: [h],
    });
    expect(boltsOf(two({ boundLots: { h: "x", g: "x" } }))).toEqual({
      where: ["x p0,p1", "y p2"],
      otherLots: [h],
    });
    expect(boltsOf(two({ boundLots: { g: "gone" } }))).toEqual({
      where: ["y p0,p1,p2"],
      otherLots: [{ lotGroup: "g", lot: "gone" }],
    });
  });

  test("of two groups that find no place the one with the most cloth gives way first", () => {
    // By hand: two of 600 × 400, and two of 700 × 320, go neither beside each other nor into 600 mm below each other.
    const g = [0, 1].map((): Sized => ({ size: [600, 400], lotGroup: "g" }));
    const h = [0, 1].map((): Sized => ({ size: [700, 320], lotGroup: "h" }));
    const short = (lot: string): Bolt => ({ ...BOLT, id: lot, lot, lengthMm: 600 });
    const all = [short("x"), short("y"), { ...BOLT, id: "z", lot: "z", costPerMm: 3 }];
    const gone = (boundLots: Record<string, string>) => {
      const search = startClothSearch(problemOf([...g, ...h], { bolts: all, boundLots }));
      expect(search.done).toBe(false);
      search.improve(200);
      return planOf(search.answer()).otherLots?.map(({ lotGroup }) => lotGroup);
    };
    expect(gone({ g: "x", h: "y" })).toEqual(["g", "h"]);
    expect(gone({ h: "y", g: "x" })).toEqual(["g", "h"]);
  });

  test("and what is held stays where it lies as well", () => {
    const held: HeldPiece[] = [{ pieceId: "p2", boltId: "y", xMm: 0, yMm: 500, turn: 0 }];
    expect(boltsOf(two({ boundLots: { g: "x" }, held }))).toEqual({
      where: ["x p0,p1", "y p2"],
      otherLots: undefined,
    });
  });
});

describe("round what somebody has laid", () => {
  const search = (pieces: readonly Sized[], held: readonly HeldPiece[], more: Partial<ClothProblem> = {}) => {
    const problem = problemOf(pieces, { held, ...more });
    const found = startClothSearch(problem);
    while (found.evaluations < 300 && found.improve(100));
    const plan = planOf(found.answer("stopped"));
    expect(verifyCloth(problem, plan)).toEqual([]);
    expect(found.cost).toBeCloseTo(plan.cost, 9);
    expect(found.lowerBound).toEqual(plan.bound);
    expect(plan.evaluations).toBe(found.evaluations);
    return plan;
  };
  const at = (n: number, xMm: number, yMm: number, turn: HeldPiece["turn"] = 0): HeldPiece => ({
    pieceId: `p${n}`,
    boltId: "b",
    xMm,
    yMm,
    turn,
  });
  const yOf = (plan: ClothCutPlan, n: number) =>
    plan.bolts.flatMap(({ placements }) => placements).find(({ pieceId }) => pieceId === `p${n}`)?.yMm;

  // By hand, cloth 1000 wide.
  test("others are stacked beside it, before it and behind it, without more cloth", () => {
    const beside = [{ size: [600, 700] }, { size: [400, 300] }, { size: [400, 400] }] as const;
    expect(search(beside, [at(0, 0, 0)])).toMatchObject({ status: "optimal", cost: 700, gap: 0 });
    expect(search(beside, [at(0, 400, 0)]).cost).toBe(700);
    // 200 wide left and right of it: nothing of 400 lies there, but both lie beside each other.
    expect(search(beside, [at(0, 200, 0)])).toMatchObject({ status: "stopped", cost: 1100 });
    const before = [{ size: [1000, 300] }, { size: [1000, 500] }, { size: [1000, 200] }] as const;
    const plan = search(before, [at(0, 0, 500)]);
    expect([plan.cost, yOf(plan, 0), yOf(plan, 1), yOf(plan, 2)]).toEqual([1000, 500, 0, 800]);
  });

  test("two that stay in one run of cloth share its band; a longer one beside them reaches over both", () => {
    const pieces = [{ size: [300, 400] }, { size: [300, 400] }, { size: [700, 800] }] as const;
    expect(search(pieces, [at(0, 0, 0), at(1, 0, 400)]).cost).toBe(800);
    expect(search([{ size: [300, 400] }, { size: [700, 900] }], [at(0, 0, 250)]).cost).toBe(900);
  });

  test("a turned one stays turned", () => {
    const free = { grain: "free", nap: "either" } as const;
    const plan = search([{ size: [800, 300], ...free }, { size: [700, 800] }], [at(0, 0, 0, 90)]);
    expect(plan).toMatchObject({ status: "optimal", cost: 800 });
  });

  test("pieces of its lot come from it", () => {
    const bolts = [
      { ...BOLT, lot: "x", costPerMm: 3 },
      { ...BOLT, id: "c", lot: "y", lengthMm: 1000 },
    ];
    const pieces = [0, 1].map(() => ({ size: [900, 300] as const, lotGroup: "g" }));
    const plan = search([...pieces, { size: [900, 100] }], [at(0, 0, 0)], { bolts });
    expect(plan.bolts.map(({ boltId, usedMm }) => [boltId, usedMm])).toEqual([
      ["b", 600],
      ["c", 100],
    ]);
  });

  test("widths joined to it match it", () => {
    const pieces = [0, 1, 2].map((index) => ({ size: [900, 500] as const, join: { group: "j", index } }));
    for (const [match, least] of [
      ["straight", 100 + 2 * 640 + 500],
      ["half-drop", 100 + 2 * 640 + 500],
    ] as const) {
      const plan = search(pieces, [at(0, 0, 100)], { repeat: { alongMm: 640, match } });
      expect(plan.cost).toBeGreaterThanOrEqual(100 + 500 + 500);
      expect(plan.cost).toBeLessThanOrEqual(least + 640);
    }
  });

  test("where nothing else finds a place with it there, it is let go", () => {
    const bolts = [{ ...BOLT, lengthMm: 1000 }];
    const plan = search([{ size: [1000, 500] }, { size: [1000, 500] }], [at(0, 0, 250)], { bolts });
    expect(plan.notHeld).toEqual([
      { pieceId: "p0", reason: "no place was found for the other pieces with it there" },
    ]);
    expect(plan.cost).toBe(1000);
    const twice = search([{ size: [1000, 500] }], [at(0, 0, 250), at(0, 0, 0)]);
    expect(twice.notHeld).toEqual([{ pieceId: "p0", reason: "it is laid twice" }]);
    expect(yOf(twice, 0)).toBe(250);
  });

  test("a flaw before, beside or behind it is kept clear of", () => {
    const flaws = [
      { xMm: 0, yMm: 100, widthMm: 1000, lengthMm: 20 },
      { xMm: 700, yMm: 600, widthMm: 20, lengthMm: 20 },
      { xMm: 0, yMm: 1100, widthMm: 1000, lengthMm: 10 },
    ];
    const pieces = [
      { size: [500, 400] },
      { size: [480, 380] },
      { size: [900, 90] },
      { size: [900, 300] },
    ] as const;
    const plan = search(pieces, [at(0, 0, 500)], { bolts: [{ ...BOLT, flaws }] });
    expect(plan.notHeld).toBeUndefined();
    // The shallow one lies before the first flaw, the long one between the first and what is held or behind all.
    expect(plan.cost).toBeLessThanOrEqual(1410);
  });
});

describe("the cuts of a plan", () => {
  const cutsOf = (problem: ClothProblem) => planOf(solveCloth(problem, 200)).bolts[0];

  test("leave what is large enough to keep, whichever way it lies, and call the rest waste", () => {
    const left = (keep: ClothProblem["keep"], flaws: Bolt["flaws"] = []) => {
      const bolts = [{ ...BOLT, name: "Linen", lengthMm: 900, flaws }];
      return cutsOf(problemOf([{ size: [700, 500] }], { keep, bolts }))?.remnants.map(
        ({ name, xMm, yMm, widthMm, lengthMm }) => [name, xMm, yMm, widthMm, lengthMm],
      );
    };
    const one = [["Linen, remnant 1", 700, 0, 300, 500]];
    expect(left({ widthMm: 300, lengthMm: 500 })).toEqual(one);
    expect(left({ widthMm: 500, lengthMm: 300 })).toEqual(one);
    expect(left({ widthMm: 301, lengthMm: 500 })).toEqual([]);
    expect(left({ widthMm: 300, lengthMm: 501 })).toEqual([]);
    const keep = { widthMm: 300, lengthMm: 500 };
    const flawAt = (xMm: number, yMm: number) => left(keep, [{ xMm, yMm, widthMm: 10, lengthMm: 10 }]);
    expect(flawAt(800, 100)).toEqual([]);
    expect(flawAt(800, 700)).toEqual(one);
  });

  test("come off from the right for the left-handed", () => {
    const two = (leftHanded: boolean) =>
      cutsOf(
        problemOf([{ size: [400, 500] }, { size: [300, 500] }], { table: { leftHanded } }),
      )?.placements.map(({ xMm, widthMm }) => [xMm, xMm + widthMm]);
    expect(two(false)).toEqual([
      [0, 400],
      [400, 700],
    ]);
    expect(two(true)?.at(-1)?.[1]).toBe(1000);
    expect(two(true)?.[0]?.[0]).toBe(300);
  });

  test("are made two at one go where equal lengths lie next to each other on plain cloth", () => {
    const lengths = [500, 300, 500, 300].flatMap((length) => [
      { size: [600, length] as const },
      { size: [400, length] as const },
    ]);
    const doubled = (
      table: ClothProblem["table"],
      bolt: Partial<Bolt> = {},
      more: Partial<ClothProblem> = {},
    ) => {
      const bolts = [{ ...BOLT, ...bolt }];
      const plan = planOf(solveCloth(problemOf(lengths, { table, bolts, ...more }), 300));
      expect(plan.cost).toBe(1600);
      return plan.bolts[0]?.cuts.filter(({ withCut }) => withCut !== undefined).length;
    };
    expect(doubled({ doubled: true })).toBe(2);
    expect(doubled({})).toBe(0);
    expect(doubled({ doubled: true }, { flaws: [{ xMm: 0, yMm: 5000, widthMm: 1, lengthMm: 1 }] })).toBe(0);
    expect(doubled({ doubled: true }, {}, { repeat: { alongMm: 640, match: "straight" } })).toBe(0);
  });

  test("lie next to each other where they are cut alike, in whichever order their pieces come", () => {
    // By hand: two lengths of 300 with a third of 200 between them; of the second the right piece is named first.
    const pieces: Sized[] = [
      { size: [600, 300] },
      { size: [400, 300] },
      { size: [1000, 200] },
      { size: [400, 300] },
      { size: [600, 300] },
    ];
    const places = [
      [0, 0],
      [600, 0],
      [0, 300],
      [600, 500],
      [0, 500],
    ] as const;
    const laid = (table: ClothProblem["table"], apart = 0) => {
      const problem = problemOf(pieces, { table });
      const grid = stepGridOf(problem);
      const packing = packed(grid, {
        x: Int32Array.from(places, ([x]) => 10 * x),
        y: Float64Array.from(places, ([, y]) => 10 * (y > 300 ? y + apart : y)),
        bolt: new Int16Array(5),
        w: Int32Array.from(grid.items, ({ w }) => w),
        h: Int32Array.from(grid.items, ({ h }) => h),
      });
      const [bolt] = layOutBolts(problem, grid, packing);
      return pieces.map((_, n) => bolt?.placements.find(({ pieceId }) => pieceId === `p${n}`)?.yMm);
    };
    expect(laid({ doubled: true })).toEqual([0, 0, 600, 300, 300]);
    expect(laid({})).toEqual([0, 0, 300, 500, 500]);
    // Where cloth is lost between lengths all stay.
    expect(laid({ doubled: true }, 1)).toEqual([0, 0, 300, 501, 501]);
  });

  test("laid by hand are as the pieces lie; what is said of the bound is taken over", () => {
    const problem = problemOf([{ size: [400, 500] }, { size: [300, 500] }], {
      bolts: [{ ...BOLT, costPerMm: 2 }],
    });
    const lying = (n: number, xMm: number, widthMm: number) => ({
      pieceId: `p${n}`,
      xMm,
      yMm: 100,
      widthMm,
      lengthMm: 500,
      turn: 0 as const,
    });
    const laid = [
      { boltId: "b", placements: [lying(0, 0, 400), lying(1, 500, 300)] },
      { boltId: "none", placements: [] },
      { boltId: "gone", placements: [lying(0, 0, 400)] },
    ];
    const { plan, faults } = planByHand(problem, laid.slice(0, 2));
    expect(faults).toEqual([]);
    expect(plan).toMatchObject({ status: "feasible", cost: 1200, evaluations: 0 });
    expect(plan.bolts.map(({ boltId, usedMm }) => [boltId, usedMm])).toEqual([["b", 600]]);
    // 350,000 mm² on 1000 are 350, in whole lengths of 500 at 2 a millimetre: 1000.
    expect(plan.bound).toEqual({ cost: 1000, which: "area" });
    expect(plan.gap).toBeCloseTo(0.2, 12);
    expect(planByHand(problem, laid.slice(0, 1), { cost: 0, which: "bars" }).plan).toMatchObject({ gap: 0 });
    const other = [{ lotGroup: "g", lot: "x" }];
    expect(planByHand(problem, laid.slice(0, 1), undefined, other).plan.otherLots).toEqual(other);
    expect("otherLots" in plan).toBe(false);
    expect(planByHand(problem, laid.slice(2)).plan.bolts).toEqual([]);
    const held: HeldPiece[] = [{ pieceId: "p0", boltId: "b", xMm: 7, yMm: 7, turn: 0 }];
    expect(planByHand({ ...problem, held }, laid.slice(0, 1)).faults).toEqual([]);
  });
});
