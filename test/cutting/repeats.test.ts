import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  type ClothCutPlan,
  type ClothProblem,
  type Piece,
  STRAIGHT,
  solveCloth,
} from "../../src/cutting/cloth/index.ts";
import { inches, MM_PER_YARD } from "../../src/units/index.ts";

function cloth(
  widthMm: number,
  pieces: readonly Partial<Piece>[],
  more: Partial<ClothProblem> = {},
): ClothProblem {
  return {
    id: "cloth",
    bolts: [{ id: "bolt", remnant: false, widthMm, flaws: [], costPerMm: 1 }],
    pieces: pieces.map((piece, at) => ({
      id: `p${at}`,
      shade: "any",
      part: "face",
      widthMm,
      lengthMm: 1000,
      grain: "fixed",
      nap: "one-way",
      ...piece,
    })),
    gapMm: 0,
    cutting: STRAIGHT,
    keep: { widthMm: 200, lengthMm: 300 },
    seed: 1,
    ...more,
  };
}

function solved(problem: ClothProblem, evaluations = 2000): ClothCutPlan {
  const answer = solveCloth(problem, evaluations);
  if (!("cost" in answer)) throw new Error(JSON.stringify(answer));
  return answer;
}

function orders<T>(list: readonly T[]): T[][] {
  if (list.length < 2) return [[...list]];
  return list.flatMap((one, at) => orders(list.toSpliced(at, 1)).map((rest) => [one, ...rest]));
}

/** Pieces as wide as the cloth, each started as early as its place in the repeat allows, in the best of all orders. */
function shortest(pieces: readonly { start: number; lengthMm: number }[], repeatMm: number): number {
  const lengths = orders(pieces).map((order) =>
    order.reduce((end, { start, lengthMm }) => {
      const wait = (((start - end) % repeatMm) + repeatMm) % repeatMm;
      return end + wait + lengthMm;
    }, 0),
  );
  return Math.min(...lengths);
}

/** The shortest of all ways to lay pieces side by side and below each other, starts at every row that may matter. */
function shortestAnywhere(
  widthMm: number,
  pieces: readonly { widthMm: number; lengthMm: number; start: number }[],
  repeatMm: number,
): number {
  let best = Number.POSITIVE_INFINITY;
  const laid: { x: number; y: number; w: number; h: number }[] = [];
  const xs = new Set<number>([0]);
  for (const { widthMm: w } of pieces) for (const x of [...xs]) if (x + w < widthMm) xs.add(x + w);
  const visit = (rest: readonly (typeof pieces)[number][], length: number): void => {
    if (length >= best) return;
    const [piece, ...others] = rest;
    if (!piece) {
      best = length;
      return;
    }
    for (const x of xs) {
      if (x + piece.widthMm > widthMm) continue;
      for (let y = piece.start; y + piece.lengthMm < best; y += repeatMm) {
        const clear = laid.every(
          (one) =>
            x >= one.x + one.w ||
            one.x >= x + piece.widthMm ||
            y >= one.y + one.h ||
            one.y >= y + piece.lengthMm,
        );
        if (!clear) continue;
        laid.push({ x, y, w: piece.widthMm, h: piece.lengthMm });
        visit(others, Math.max(length, y + piece.lengthMm));
        laid.pop();
      }
    }
  };
  visit(pieces, 0);
  return best;
}

describe("pieces on the repeat, against all ways to lay them", () => {
  const start = fc.constantFrom(0, 40, 100, 170, 250, 310);
  const lengthMm = fc.constantFrom(90, 200, 320, 350, 480, 640, 700);

  test("full widths with starts of their own come in the best order", () => {
    fc.assert(
      fc.property(fc.array(fc.record({ start, lengthMm }), { minLength: 1, maxLength: 5 }), (list) => {
        const pieces = list.map((one) => ({ lengthMm: one.lengthMm, start: { alongMm: one.start } }));
        const plan = solved(cloth(1400, pieces, { repeat: { alongMm: 320, match: "straight" } }), 30_000);
        const best = shortest(list, 320);
        expect(plan.cost).toBeCloseTo(best, 6);
        expect(plan.bound.cost).toBeLessThanOrEqual(best + 1e-6);
      }),
      { numRuns: 60 },
    );
  });

  test("the bound holds for pieces side by side, and no plan is shorter than the shortest", () => {
    const widthMm = fc.constantFrom(300, 450, 600, 900);
    fc.assert(
      fc.property(
        fc.array(fc.record({ widthMm, lengthMm, start }), { minLength: 2, maxLength: 4 }),
        (list) => {
          const pieces = list.map((one) => ({ ...one, start: { alongMm: one.start } }));
          const problem = cloth(1000, pieces, {
            repeat: { alongMm: 320, match: "straight" },
            cutting: { kind: "straight" },
          });
          const plan = solved(problem);
          const best = shortestAnywhere(1000, list, 320);
          expect(plan.bound.cost).toBeLessThanOrEqual(best + 1e-6);
          expect(plan.cost).toBeGreaterThanOrEqual(best - 1e-6);
          // What straight cuts and our layers may lose on four pieces.
          expect(plan.cost).toBeLessThanOrEqual(1.5 * best);
        },
      ),
      { numRuns: 60 },
    );
  });

  test("joined widths may begin anywhere together, then match each other", () => {
    const joined = (group: string, lengthMm: number) =>
      [0, 1, 2].map((index) => ({ lengthMm, join: { group, index } }));
    const pieces = [...joined("a", 120), ...joined("b", 150)];
    const plan = solved(cloth(1400, pieces, { repeat: { alongMm: 320, match: "straight" } }), 4000);
    // Panels of the one lie between those of the other, three repeats in all: 2 · 320 + 120 + 150.
    expect(plan.cost).toBe(910);
  });

  test("a half drop across the cloth: columns begin half a repeat apart", () => {
    const piece = { widthMm: 200, lengthMm: 300, start: { alongMm: 0, acrossMm: 0 } };
    const repeat = { alongMm: 300, acrossMm: 200, match: "half-drop" as const };
    const plan = solved(cloth(400, [piece, piece, piece, piece], { repeat, cutting: { kind: "straight" } }));
    const places = plan.bolts[0]?.placements ?? [];
    for (const { xMm, yMm } of places) expect(yMm % 300).toBe(xMm === 0 ? 0 : 150);
    // Two columns of two would end at 750, one column of four at 1200: straight cuts free the former.
    expect(plan.cost).toBe(750);
  });
});

/** Worked examples: see each; lengths as they leave the bolt, not as they are bought. */
describe("published lengths", () => {
  test("two flat shades of 27 × 58 in from cloth of 55 in: 2 × 68 in, sold as 4 yd (sewing lesson, flat shade)", () => {
    const piece = { widthMm: inches(33), lengthMm: inches(68) };
    const plan = solved(cloth(inches(55), [piece, piece]));
    expect(plan.status).toBe("optimal");
    expect(plan.cost).toBeCloseTo(2 * inches(68), 0);
    expect(plan.cost).toBeLessThanOrEqual(4 * MM_PER_YARD);
  });

  test("four drops of 240 cm, repeat 37 cm: seven repeats each, 4 × 259 cm bought (curtain guide)", () => {
    const drop = { lengthMm: 2400, start: { alongMm: 0 } };
    const plan = solved(
      cloth(1400, [drop, drop, drop, drop], { repeat: { alongMm: 370, match: "straight" } }),
    );
    // The last drop is not raised to whole repeats: nothing follows it.
    expect(plan).toMatchObject({ status: "optimal", cost: 3 * 2590 + 2400 });
    expect(Math.ceil(plan.cost / 370) * 370).toBe(4 * 2590);
    expect(
      solved(cloth(1400, [{ lengthMm: 2400 }, { lengthMm: 2400 }, { lengthMm: 2400 }, { lengthMm: 2400 }]))
        .cost,
    ).toBe(9600);
  });

  test("three widths in half drop, repeat 65 cm, 195 cm each: within 6.5 m wherever the bolt begins (“Half drop repeat”)", () => {
    const panels = [0, 1, 2].map((index) => ({
      lengthMm: 1950,
      start: { alongMm: 0 },
      join: { group: "face", index },
    }));
    const repeat = { alongMm: 650, match: "half-drop" as const };
    let longest = 0;
    for (let rowMm = 0; rowMm < 650; rowMm += 25) {
      const bolts = [{ id: "bolt", remnant: false, widthMm: 1400, flaws: [], costPerMm: 1, rowMm }];
      const { cost } = solved(cloth(1400, panels, { repeat, bolts }));
      expect(cost).toBeGreaterThanOrEqual(3 * 1950 + 325);
      longest = Math.max(longest, cost);
    }
    expect(longest).toBeLessThanOrEqual(6500);
    expect(longest).toBeGreaterThan(6400);
  });

  test.each([
    ["236 in from 54 in: 4.37, so 5 widths (billable widths)", inches(236), inches(54), 5],
    ["440 cm from 140 cm: 3.14, so 4 widths (curtain guide)", 4400, 1400, 4],
  ])("%s", (_what, wholeMm, widthMm, widths) => {
    const full = Math.floor(wholeMm / widthMm);
    const pieces = [...Array.from({ length: full }, () => ({})), { widthMm: wholeMm - full * widthMm }];
    expect(solved(cloth(widthMm, pieces))).toMatchObject({ status: "optimal", cost: widths * 1000 });
  });
});

describe("what lies on the table", () => {
  const small = { widthMm: 400, lengthMm: 500 };

  test("a remnant that fits is cut before new cloth", () => {
    const bolts = [
      { id: "new", remnant: false, widthMm: 1400, flaws: [], costPerMm: 1 },
      { id: "left", remnant: true, widthMm: 450, lengthMm: 600, flaws: [], costPerMm: 0.2 },
    ];
    const plan = solved(cloth(1400, [small], { bolts }));
    expect(plan.bolts.map(({ boltId }) => boltId)).toEqual(["left"]);
  });

  test("a band that is flawed is left out, pieces lie beside a small flaw", () => {
    const band = { xMm: 0, yMm: 400, widthMm: 1400, lengthMm: 50 };
    const spot = { xMm: 0, yMm: 700, widthMm: 60, lengthMm: 60 };
    const bolts = [{ id: "bolt", remnant: false, widthMm: 1400, flaws: [band, spot], costPerMm: 1 }];
    const plan = solved(
      cloth(
        1400,
        [
          { ...small, widthMm: 700 },
          { ...small, widthMm: 600 },
        ],
        { bolts },
      ),
    );
    // Nothing of 500 fits above the band; below it both lie beside the spot.
    expect(plan.cost).toBe(950);
  });

  test("pieces of one dye lot come from bolts of one lot, at the price of cloth", () => {
    const bolts = [
      { id: "a", remnant: true, widthMm: 500, lengthMm: 1100, flaws: [], costPerMm: 0.1 },
      { id: "b", remnant: false, widthMm: 500, flaws: [], costPerMm: 1 },
    ];
    const three = [small, small, small];
    expect(solved(cloth(500, three, { bolts })).bolts).toHaveLength(2);
    const plan = solved(
      cloth(
        500,
        three.map((one) => ({ ...one, lotGroup: "face" })),
        { bolts },
      ),
    );
    expect(plan.bolts.map(({ boltId }) => boltId)).toEqual(["b"]);
    const lots = bolts.map((bolt) => ({ ...bolt, lot: "same" }));
    expect(
      solved(
        cloth(
          500,
          three.map((one) => ({ ...one, lotGroup: "face" })),
          { bolts: lots },
        ),
      ).bolts,
    ).toHaveLength(2);
  });

  test("what is left beside the pieces is named where it is worth keeping", () => {
    const plan = solved(cloth(1400, [{ widthMm: 900 }]));
    expect(plan.bolts[0]?.remnants).toEqual([
      { name: "bolt, remnant 1", boltId: "bolt", xMm: 900, yMm: 0, widthMm: 500, lengthMm: 1000 },
    ]);
    const keep = { widthMm: 600, lengthMm: 600 };
    expect(solved(cloth(1400, [{ widthMm: 900 }], { keep })).bolts[0]?.remnants).toEqual([]);
  });

  test("the bolt is told after each cut across", () => {
    const bolts = [{ id: "bolt", remnant: false, widthMm: 1400, lengthMm: 5000, flaws: [], costPerMm: 1 }];
    const plan = solved(cloth(1400, [{ lengthMm: 1200 }, { lengthMm: 800 }], { bolts }));
    const left = plan.bolts[0]?.cuts.map(({ boltLeftMm }) => boltLeftMm);
    expect(left?.at(-1)).toBe(3000);
  });

  test("a gap lies between all cuts, not beside the selvedges", () => {
    const plan = solved(cloth(1000, [{ widthMm: 495 }, { widthMm: 495 }], { gapMm: 10 }));
    expect(plan).toMatchObject({ status: "optimal", cost: 1000 });
    expect(solved(cloth(1000, [{ widthMm: 496 }, { widthMm: 495 }], { gapMm: 10 })).cost).toBe(2010);
  });

  test("wide pieces one below the other on a remnant beside a new bolt: what the bound says, to a thousandth of a millimetre", () => {
    const remnant = { id: "end", remnant: true, widthMm: 1400, lengthMm: 2500, flaws: [], costPerMm: 0.05 };
    const bolts = [remnant, { id: "bolt", remnant: false, widthMm: 1400, flaws: [], costPerMm: 1 }];
    const plan = solved(cloth(1400, [{ lengthMm: 1200 }, { lengthMm: 800.7 }], { bolts }), 1);
    // Nothing lies beside a piece of the full width, so that 2000.7 mm of the remnant are the least.
    expect(plan.cost).toBeCloseTo(0.05 * 2000.7, 6);
    expect(plan.status).toBe("optimal");
  });

  test("too little cloth is told with what finds no place", () => {
    const bolts = [{ id: "bolt", remnant: false, widthMm: 1400, lengthMm: 1900, flaws: [], costPerMm: 1 }];
    expect(solveCloth(cloth(1400, [{}, {}], { bolts }), 100)).toMatchObject({
      status: "infeasible",
      reason: "the bolts are too short for all pieces",
    });
    const narrow = [
      { widthMm: 800, lengthMm: 1000 },
      { widthMm: 700, lengthMm: 1000 },
    ];
    expect(solveCloth(cloth(1400, narrow, { bolts }), 100)).toMatchObject({ status: "infeasible" });
    expect(solveCloth(cloth(1400, [{ widthMm: 1500 }]), 100)).toMatchObject({ pieceIds: ["p0"] });
  });

  test("no pieces need no cloth", () => {
    expect(solveCloth(cloth(1400, []), 10)).toMatchObject({ status: "optimal", cost: 0, bolts: [] });
  });
});
