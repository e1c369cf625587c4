import { describe, expect, test } from "vitest";
import { givenCloth, type Sized } from "../../../test/cutting/given-cloth.ts";
import { chance } from "../chance.ts";
import { aimAt } from "./aim.ts";
import { settingsFor } from "./choose-decoder.ts";
import { firstLots } from "./first-lots.ts";
import { type StepGrid, stepGridOf } from "./grid.ts";
import type { Bolt, ClothProblem, Piece } from "./index.ts";
import { layersOn, partOf, withLayers } from "./layers-of.ts";
import { quickBound } from "./lower-bound.ts";
import { packed, packingOfLaid } from "./packing.ts";
import { beyondAll, impossible } from "./possible.ts";

function problemOf(
  sizes: readonly Sized["size"][],
  bolts: readonly Partial<Bolt>[] = [{}],
  piece: Partial<Piece> = {},
  more: Partial<ClothProblem> = {},
): ClothProblem {
  return givenCloth(
    sizes.map((size) => ({ size, ...piece })),
    bolts,
    more,
  );
}

describe("numbers that look like chance", () => {
  // Mulberry32 (Tommy Ettinger, public domain) written out over whole numbers of any length, modulo 2³².
  function mulberry32(seed: bigint): () => number {
    const m = (n: bigint) => n & 0xffffffffn;
    let a = m(seed);
    return () => {
      a = m(a + 0x6d2b79f5n);
      let t = m((a ^ (a >> 15n)) * (1n | a));
      t = m(m(t + m((t ^ (t >> 7n)) * (61n | t))) ^ t);
      return Number(t ^ (t >> 14n)) / 2 ** 32;
    };
  }

  test.each([0, 1, 7, 20261130, 2 ** 31 - 1])("from %d on are those of the method", (seed) => {
    const [own, other] = [chance(seed), mulberry32(BigInt(seed))];
    for (let n = 0; n < 50; n++) expect(own()).toBe(other());
  });
});

describe("lengths for a plan that costs so much less", () => {
  // Steps are tenths, a millimetre costs 1 of the first and the last, 2 of the second.
  const grid = stepGridOf(
    problemOf([[50, 7]], [{ lengthMm: 200 }, { lengthMm: 300, costPerMm: 2 }, { costPerMm: 1 }]),
  );
  const best = (...usedMm: number[]) => {
    const used = Float64Array.from(usedMm, (mm) => 10 * mm);
    const none = { x: new Int32Array(), y: new Float64Array(), bolt: new Int16Array() };
    return { ...none, w: new Int32Array(), h: new Int32Array(), used, cost: 0 };
  };
  const aim = (used: ReturnType<typeof best>, saving: number, tight = false) =>
    [...aimAt(grid, [0, 1, 2], used, saving, tight)].map((steps) => steps / 10);

  test("come off the bolt that is cut last, in whole steps of 7 mm; the others keep all they have", () => {
    expect(grid.stepY).toBe(70);
    expect(aim(best(140, 70, 700), 70)).toEqual([200, 300, 630]);
    expect(aim(best(140, 70, 700), 69)).toEqual([200, 300, 637]);
    // Less than a step is a step.
    expect(aim(best(140, 70, 700), 1)).toEqual([200, 300, 693]);
    expect(aim(best(140, 70, 700), 7)).toEqual([200, 300, 693]);
  });

  test("or keep only what they have used", () => {
    expect(aim(best(140, 70, 700), 70, true)).toEqual([140, 70, 630]);
  });

  test("come off the one before as well where the last has not so much, by what each costs", () => {
    // 70 off the last, the other 28 at 2 a millimetre: 14 mm.
    expect(aim(best(140, 70, 70), 98)).toEqual([200, 56, 0]);
    expect(aim(best(140, 70, 0), 28)).toEqual([200, 56, 0]);
    expect(aim(best(140, 70, 70), 1000)).toEqual([0, 0, 0]);
  });

  test("none are cut from a bolt that is not in use as long as there is something to save", () => {
    // By hand: once the last has given all that is asked, or more, the first has its whole length.
    expect(aim(best(0, 70, 700), 70)).toEqual([200, 300, 630]);
    expect(aim(best(0, 70, 70), 70)).toEqual([200, 300, 0]);
    expect(aim(best(0, 70, 700), 70, true)).toEqual([0, 70, 630]);
    // 28 of 98 are left to save, and the second has none to give: the first gives them.
    expect(aim(best(140, 0, 70), 98)).toEqual([112, 0, 0]);
    expect(aim(best(0, 0, 0), 5)).toEqual([0, 0, 0]);
  });

  test("stay what was used of a bolt without end that is cut before the last", () => {
    const steps = aimAt(grid, [2, 0, 1], best(140, 70, 700), 28, false);
    expect([...steps].map((one) => one / 10)).toEqual([200, 56, 700]);
  });

  test("are those of the cloth, whatever gap lies between pieces", () => {
    const gaps = stepGridOf(problemOf([[50, 6]], [{ lengthMm: 200 }, {}], {}, { gapMm: 2 }));
    expect([...aimAt(gaps, [0, 1], best(140, 70), 4, false)]).toEqual([2000, 660]);
  });

  test("nothing comes off what costs nothing", () => {
    const free = stepGridOf(problemOf([[50, 7]], [{ lengthMm: 200, costPerMm: 0 }]));
    expect([...aimAt(free, [0], best(140), 5, false)]).toEqual([2000]);
    expect([...aimAt(free, [0], best(140), 5, true)]).toEqual([1400]);
  });
});

describe("lots that groups begin with", () => {
  const gridOf = (
    bolts: readonly (readonly [lot: number, w: number, h: number, cost: number])[],
    lotAreas: number[],
  ) => {
    const grid = stepGridOf(problemOf([[50, 7]]));
    const [bolt] = grid.bolts;
    if (bolt === undefined) throw new Error("no bolt");
    return {
      ...grid,
      lotAreas,
      bolts: bolts.map(([lot, w, h, costPerStep]) => ({ ...bolt, lot, w, h, costPerStep })),
    };
  };

  test("are the only ones there are", () => {
    expect(firstLots(gridOf([[0, 10, 10, 1]], [50, 40]), [[0], []])).toEqual([[0, -1]]);
  });

  // Lot 0 is dear, lot 1 cheap with an area of 100: at 97, 85 and 65 of it the groups of 60 and 30 find room or not.
  test("are the cheapest with room, as long as that lasts, with ever more to spare; at last the largest", () => {
    const grid = gridOf(
      [
        [0, 10, 30, 4],
        [1, 10, 10, 1],
      ],
      [30, 60],
    );
    const both = [
      [0, 1],
      [0, 1],
    ];
    // 97 hold both; 85 and 65 hold the larger alone.
    expect(firstLots(grid, both)).toEqual([
      [1, 1],
      [0, 1],
      [0, 0],
    ]);
    // The larger goes first: 90 of 97, then 30 elsewhere; at 85 and 65 the 30 find room.
    expect(firstLots({ ...grid, lotAreas: [30, 90] }, both)).toEqual([
      [0, 1],
      [1, 0],
      [0, 0],
    ]);
  });

  test("count all bolts of a lot, at the rate of the cheapest by its width", () => {
    const grid = gridOf(
      [
        [0, 10, 10, 2],
        [1, 20, 3, 3],
        [1, 10, 4, 9],
      ],
      [90],
    );
    // 60 and 40 together are 100; 3 by a width of 20 is cheaper than 2 by 10.
    expect(firstLots(grid, [[0, 1]])).toEqual([[1], [0]]);
    expect(firstLots({ ...grid, lotAreas: [98] }, [[0, 1]])).toEqual([[0]]);
  });
});

describe("what is plainly impossible", () => {
  const of = (...given: Parameters<typeof problemOf>) => impossible(stepGridOf(problemOf(...given)));

  test("is told with its pieces: no cloth, too large, no lot with enough", () => {
    expect(of([[50, 50]], [])).toEqual({
      status: "infeasible",
      reason: "there is no cloth",
      pieceIds: ["p0"],
    });
    expect(of([], [])).toBeUndefined();
    const sizes = [
      [101, 50],
      [50, 201],
      [100, 200],
    ] as const;
    const bolts = [{ lengthMm: 200 }, { widthMm: 90, lengthMm: 300 }];
    expect(of(sizes, bolts)).toEqual({
      status: "infeasible",
      reason: "larger than every bolt",
      pieceIds: ["p0"],
    });
    expect(of([[120, 80]], bolts, { grain: "free", nap: "either" })).toBeUndefined();
    expect(of([[120, 101]], [{ lengthMm: 200 }], { grain: "free", nap: "either" })?.pieceIds).toEqual(["p0"]);
    expect(of([[90, 300]], [{ lengthMm: 250 }], { grain: "free", nap: "either" })?.pieceIds).toEqual(["p0"]);
    expect(of([[100, 200]], [{ lengthMm: 200 }])).toBeUndefined();
  });

  test("of lots is the area that a group needs of one, or of its own", () => {
    const lots = (length: number, boundLots?: ClothProblem["boundLots"]) =>
      of(
        [
          [100, length],
          [100, 100],
        ],
        [
          { lengthMm: 150, lot: "x" },
          { lengthMm: 50, lot: "x" },
          { lengthMm: 190, lot: "y" },
        ],
        { lotGroup: "g" },
        boundLots ? { boundLots } : {},
      );
    expect(lots(100)).toBeUndefined();
    expect(lots(101)).toMatchObject({
      reason: "no dye lot has cloth enough for the pieces that must match",
      pieceIds: ["p0", "p1"],
    });
    expect(lots(100, { g: "x" })).toBeUndefined();
    expect(lots(90, { g: "y" })).toBeUndefined();
    expect(lots(91, { g: "y" })?.pieceIds).toEqual(["p0", "p1"]);
    expect(lots(10, { g: "z" })?.pieceIds).toEqual(["p0", "p1"]);
  });

  test("is what costs more than all the cloth there is", () => {
    const grid = stepGridOf(
      problemOf([[50, 7]], [{ lengthMm: 200 }, { lengthMm: 100, costPerMm: 3 }], {}, { gapMm: 1 }),
    );
    const bound = (cost: number) => beyondAll(grid, { cost, which: "area" });
    expect(bound(500)).toBeUndefined();
    expect(bound(500.1)).toMatchObject({
      reason: "the bolts are too short for all pieces",
      pieceIds: ["p0"],
    });
    expect(beyondAll(stepGridOf(problemOf([[50, 7]])), { cost: 1e9, which: "area" })).toBeUndefined();
  });
});

describe("what areas prove", () => {
  const cost = (...given: Parameters<typeof problemOf>) => quickBound(stepGridOf(problemOf(...given)));

  // By hand, cloth of 100 at 1 a millimetre.
  test("or pieces too wide for each other, in whole steps of length", () => {
    expect(
      cost([
        [50, 70],
        [50, 70],
        [100, 35],
      ]),
    ).toEqual({ cost: 105, which: "area" });
    expect(
      cost([
        [60, 70],
        [60, 35],
        [10, 35],
      ]),
    ).toEqual({ cost: 105, which: "wide" });
    expect(
      cost([
        [50, 70],
        [60, 35],
      ]),
    ).toEqual({ cost: 70, which: "area" });
    // 56 of area by length, raised to the next multiple of 35.
    expect(
      cost([
        [40, 70],
        [80, 35],
      ]),
    ).toEqual({ cost: 70, which: "area" });
    expect(
      cost(
        [
          [60, 30],
          [60, 30],
        ],
        [{}],
        {},
        { gapMm: 2 },
      ),
    ).toEqual({ cost: 62, which: "wide" });
    // Turned it may be less wide: 30 × 60 lies beside another.
    expect(
      cost(
        [
          [60, 30],
          [60, 30],
        ],
        [{}],
        { grain: "free", nap: "either" },
      ).which,
    ).toBe("area");
    // Turned it is wider than the cloth: it lies upright, whatever else there is.
    expect(
      cost(
        [
          [60, 150],
          [60, 150],
        ],
        [{}],
        { grain: "free", nap: "either" },
      ),
    ).toEqual({ cost: 300, which: "wide" });
    // Either way too wide for another: the shorter way counts.
    expect(
      cost(
        [
          [61, 91],
          [61, 91],
        ],
        [{}],
        { grain: "free", nap: "either" },
      ),
    ).toEqual({ cost: 122, which: "wide" });
  });

  test("count the cheapest cloth by its area first, each as far as it goes", () => {
    const bolts = [
      { lengthMm: 50, costPerMm: 0.5 },
      { widthMm: 200, lengthMm: 20, costPerMm: 0.8 },
      { costPerMm: 1 },
    ];
    // 8,000 mm²: 4,000 off the second at 16, 4,000 off the first at 20; 1,000 more of it, the rest at 1 a hundred.
    const near = (sizes: readonly (readonly [number, number])[]) => cost(sizes, bolts).cost;
    expect(
      near([
        [40, 100],
        [40, 100],
      ]),
    ).toBeCloseTo(16 + 20, 2);
    expect(
      near([
        [40, 100],
        [40, 100],
        [40, 100],
      ]),
    ).toBeCloseTo(16 + 25 + 30, 2);
    expect(cost([[40, 10]], [{ costPerMm: 0 }]).cost).toBe(0);
  });
});

describe("layers of a plan", () => {
  const grid = stepGridOf(
    problemOf(
      [
        [50, 30],
        [50, 20],
        [90, 10],
        [30, 40],
        [60, 40],
      ],
      [{}, { lengthMm: 100 }],
      {},
      { gapMm: 1 },
    ),
  );
  const at = (pieceId: string, xMm: number, yMm: number) => ({
    pieceId,
    xMm,
    yMm,
    widthMm: 0,
    lengthMm: 0,
    turn: 0 as const,
  });
  const laid = [
    { boltId: "b0", placements: [at("p0", 0, 0), at("p1", 50, 5), at("p2", 0, 31), at("p3", 0, 42)] },
    { boltId: "b1", placements: [at("p4", 10, 0)] },
  ];

  test("are read from millimetres, used up to the last piece without the gap, at their cost", () => {
    const packing = packingOfLaid(grid, laid);
    expect([...(packing?.used ?? [])]).toEqual([820, 400]);
    expect(packing?.cost).toBeCloseTo(82 + 40, 9);
    expect([...(packing?.y ?? [])]).toEqual([0, 50, 310, 420, 0]);
    expect([...(packing?.x ?? [])]).toEqual([0, 500, 0, 0, 100]);
    expect([...(packing?.bolt ?? [])]).toEqual([0, 0, 0, 0, 1]);
    expect(packingOfLaid(grid, laid.slice(0, 1))).toBeUndefined();
    expect(
      packingOfLaid(grid, [{ ...laid[0], boltId: "gone", placements: laid[0]?.placements ?? [] }]),
    ).toBeUndefined();
    const turned = [laid[0], { boltId: "b1", placements: [{ ...at("p4", 10, 0), turn: 90 as const }] }];
    const quarter = packingOfLaid(grid, turned as typeof laid);
    expect([quarter?.w[4], quarter?.h[4]]).toEqual([410, 610]);
    expect([packing?.w[4], packing?.h[4]]).toEqual([610, 410]);
  });

  test("lie between cuts right across, with their lengths and areas; some give way to others behind the rest", () => {
    const packing = packingOfLaid(grid, laid);
    if (packing === undefined) throw new Error("not laid");
    const layers = layersOn(packing, 0);
    expect(layers).toEqual([
      { items: [0, 1], y: 0, length: 310, area: 510 * 310 + 510 * 210 },
      { items: [2], y: 310, length: 110, area: 910 * 110 },
      { items: [3], y: 420, length: 410, area: 310 * 410 },
    ]);
    expect(layersOn(packing, 1).map(({ items }) => items)).toEqual([[4]]);
    const kept = [layers[0], layers[2]].flatMap((layer) => (layer ? [layer] : []));
    const anew = withLayers(grid, packing, kept, { items: [2], x: [7], y: [3], w: [110], h: [910] });
    expect([...anew.y]).toEqual([0, 50, 723, 310, 0]);
    expect([...anew.x]).toEqual([0, 500, 7, 0, 100]);
    expect([anew.w[2], anew.h[2]]).toEqual([110, 910]);
    expect([...anew.used]).toEqual([723 + 910 - 10, 400]);
    expect(anew.cost).toBeCloseTo(162.3 + 40, 9);
  });

  test("what is not laid takes no length", () => {
    const none = packed(grid, {
      x: new Int32Array(5),
      y: new Float64Array(5),
      bolt: new Int16Array(5).fill(-1),
      w: new Int32Array(5),
      h: new Int32Array(5),
    });
    expect([[...none.used], none.cost]).toEqual([[0, 0], 0]);
  });

  test("some pieces alone are a problem on as much of the bolt as they need", () => {
    const part = partOf(grid, grid.bolts[1] as StepGrid["bolts"][number], [3, 0]);
    expect(part.items.map(({ piece }) => piece.id)).toEqual(["p3", "p0"]);
    expect(part.bolts.map(({ bolt, h }) => [bolt.id, h])).toEqual([["b1", Number.POSITIVE_INFINITY]]);
    expect([part.lotAreas, part.boundLots, part.joins]).toEqual([[], [], 0]);
  });
});

describe("ways to look at a problem", () => {
  const of = (
    bolts: readonly Partial<Bolt>[],
    more: Partial<ClothProblem> = {},
    piece: Partial<Piece> = {},
  ) => {
    const problem = problemOf(
      [
        [50, 7],
        [40, 9],
      ],
      bolts,
      piece,
      more,
    );
    return settingsFor(problem, stepGridOf(problem)).map(
      ({ decoder, sequence }) => `${decoder.constructor.name} ${sequence.join(" ")}`,
    );
  };
  const free: Partial<ClothProblem> = { cutting: { kind: "free" } };

  test("are layers, off what costs least by its area first", () => {
    expect(of([{}])).toEqual(["LayerDecoder 0"]);
    const finite = { lengthMm: 100 };
    expect(
      of([
        { ...finite, costPerMm: 2 },
        { ...finite, costPerMm: 3, widthMm: 200 },
      ]),
    ).toEqual(["LayerDecoder 1 0"]);
    expect(of([finite, finite])).toEqual(["LayerDecoder 0 1"]);
    expect(of([{ costPerMm: 2 }, { ...finite, costPerMm: 1 }, { ...finite, costPerMm: 3 }])).toEqual([
      "LayerDecoder 1 0 2",
    ]);
  });

  test("are boxes as well on one bolt of plain cloth without flaws, table or stages", () => {
    const both = ["BoxDecoder 0", "LayerDecoder 0"];
    expect(of([{}], free)).toEqual(both);
    expect(of([{}], { cutting: { kind: "straight" } })).toEqual(both);
    const layers = ["LayerDecoder 0"];
    expect(of([{}], { ...free, tableMm: 100 })).toEqual(layers);
    expect(of([{ flaws: [{ xMm: 0, yMm: 0, widthMm: 1, lengthMm: 1 }] }], free)).toEqual(layers);
    expect(of([{}], { ...free, boundLots: { g: "b" } }, { lotGroup: "g" })).toEqual(layers);
    const repeat = { alongMm: 10, acrossMm: 5, match: "half-drop" as const };
    expect(of([{}], { ...free, repeat }, { start: { alongMm: 0, acrossMm: 0 } })).toEqual(layers);
    expect(of([{ lengthMm: 100 }, { lengthMm: 90 }], free)).toEqual(["LayerDecoder 0 1"]);
  });
});
