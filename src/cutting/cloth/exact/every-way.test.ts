import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { givenCloth } from "../../../../test/cutting/given-cloth.ts";
import { cheaperByBruteForce } from "../../../../test/cutting/lay-by-brute-force.ts";
import { expectNear } from "../../../../test/near.ts";
import { type StepGrid, stepGridOf } from "../grid.ts";
import type { Bolt, ClothProblem, Piece } from "../index.ts";
import { everyWay, type Found, isSmall, largestFirst } from "./every-way.ts";
import { Layers, type OpenLayer } from "./layers.ts";

const ENDLESS = Number.POSITIVE_INFINITY;

/** Cloth of 60 mm at 1 a millimetre; sizes in centimetres. */
function problemOf(
  sizes: readonly (readonly [number, number])[],
  bolts: readonly Partial<Bolt>[] = [{}],
  piece: Partial<Piece> = {},
  more: Partial<ClothProblem> = {},
): ClothProblem {
  return givenCloth(
    sizes.map(([w, h]) => ({ size: [10 * w, 10 * h], nap: "either", ...piece })),
    bolts.map((bolt) => ({ widthMm: 60, ...bolt })),
    { keep: { widthMm: 1000, lengthMm: 1000 }, ...more },
  );
}

/** All that is known on the way, and what comes out. */
function searched(grid: StepGrid, stages = 3, beat = ENDLESS): { steps: Found[]; found: Found } {
  const steps: Found[] = [];
  const ways = everyWay(grid, stages, () => beat);
  for (let step = ways.next(); ; step = ways.next()) {
    if (step.done) return { steps, found: step.value };
    steps.push(step.value);
  }
}

describe("every way to cut a few pieces", () => {
  const sizes = fc.array(fc.tuple(fc.integer({ min: 1, max: 6 }), fc.integer({ min: 1, max: 4 })), {
    minLength: 1,
    maxLength: 3,
  });

  test("finds what brute force does, and what is said on the way never costs more", () => {
    fc.assert(
      fc.property(sizes, fc.constantFrom(2, 3), fc.constantFrom("fixed", "free"), (some, stages, grain) => {
        const problem = problemOf(some, [{}], { grain }, { cutting: { kind: "straight", stages } });
        const { steps, found } = searched(stepGridOf(problem), stages);
        expectNear(found.packing?.cost ?? 0, found.least, 1e-6, "the cost of the plan");
        for (const { least } of steps) expect(least).toBeLessThanOrEqual(found.least * (1 + 1e-9));
        expect(cheaperByBruteForce(problem, found.least - 1e-6)).toBeUndefined();
        // What costs as much as the best that is known is no better.
        expect(searched(stepGridOf(problem), stages, found.least).found).toEqual({
          nodes: 0,
          least: ENDLESS,
        });
        expect(searched(stepGridOf(problem), stages, found.least * 1.01).found.least).toBe(found.least);
      }),
      { numRuns: 25 },
    );
  });

  // By hand: before a flaw from 1 to 2 only the short piece has room, so it goes first: 1, then 2 to 5.
  test("round a flaw is every order of the layers", () => {
    const flaws = [{ xMm: 0, yMm: 10, widthMm: 60, lengthMm: 10 }];
    const grid = stepGridOf(
      problemOf(
        [
          [6, 3],
          [6, 1],
        ],
        [{ flaws }],
      ),
    );
    const { found } = searched(grid);
    expectNear(found.least, 50, 1e-6, "cost");
    expect([...(found.packing?.y ?? [])]).toEqual([200, 0]);
  });

  // By hand: a repeat of 4; lengths of 3 and 1 that begin at 1 and 0: 0 to 1, then 1 to 4.
  test("on a repeat is every order of the layers", () => {
    const problem = problemOf(
      [
        [6, 3],
        [6, 1],
      ],
      [{}],
      {},
      { repeat: { alongMm: 40, match: "straight" } },
    );
    const pieces = problem.pieces.map((piece, n) => ({ ...piece, start: { alongMm: n === 0 ? 10 : 0 } }));
    const { found } = searched(stepGridOf({ ...problem, pieces }));
    expectNear(found.least, 40, 1e-6, "cost");
  });

  // By hand: half as wide and at a tenth, the leftover holds 5 of the narrow piece at 5; the wide one takes 25 of the new.
  test("begins with what the area costs on the cheapest cloth, by the width of each", () => {
    const bolts = [{ widthMm: 30, lengthMm: 50, costPerMm: 0.1 }, {}];
    const problem = problemOf(
      [
        [3, 5],
        [6, 2.5],
      ],
      bolts,
    );
    const { steps, found } = searched(stepGridOf(problem));
    expectNear(found.least, 30, 1e-6, "cost");
    expect([...(found.packing?.bolt ?? [])]).toEqual([0, 1]);
    const [first] = steps.filter(({ least }) => least > 0);
    expectNear(first?.least ?? 0, 30, 1e-6, "the first bound");
    expect([...(found.packing?.used ?? [])]).toEqual([500, 250]);
  });

  // By hand: three of 6 × 2 take all the leftover, at a half, and 20 of the new.
  test("uses a leftover up before the endless bolt, in whichever order they are given", () => {
    for (const bolts of [
      [{ lengthMm: 40, costPerMm: 0.5 }, {}],
      [{}, { lengthMm: 40, costPerMm: 0.5 }],
    ]) {
      const three = [2, 2, 2].map((h) => [6, h] as const);
      expectNear(searched(stepGridOf(problemOf(three, bolts))).found.least, 40, 1e-6, "cost");
    }
    // Without an endless one there may be no plan at all.
    const none = searched(stepGridOf(problemOf([[6, 5]], [{ lengthMm: 40 }, { lengthMm: 45 }]))).found;
    expect(none).toEqual({ nodes: 0, least: ENDLESS });
  });

  // By hand: 6 × 3 off the lot at 2 a millimetre, 6 × 2 off the other at 1.
  test("leaves a group that is bound to a lot to the bolts of it", () => {
    const bolts = [{ lengthMm: 60, costPerMm: 2, lot: "x" }, { lot: "y" }];
    const costOf = (boundLots: Record<string, string>) => {
      const problem = problemOf(
        [
          [6, 3],
          [6, 2],
        ],
        bolts,
      );
      const pieces = problem.pieces.map((piece, n) => ({ ...piece, lotGroup: n === 0 ? "g" : "h" }));
      const { found } = searched(stepGridOf({ ...problem, pieces, boundLots }));
      return [found.least, ...(found.packing?.bolt ?? [])];
    };
    expect(costOf({ g: "x" })).toEqual([expect.closeTo(80, 6), 0, 1]);
    expect(costOf({ g: "x", h: "x" })).toEqual([expect.closeTo(100, 6), 0, 0]);
    expect(costOf({ k: "x" })).toEqual([expect.closeTo(50, 6), 1, 1]);
    expect(costOf({ g: "gone" })).toEqual([ENDLESS]);
  });

  test("is for up to 26 pieces in two or three stages, without joins", () => {
    const many = (count: number) => Array.from({ length: count }, () => [1, 1] as const);
    const grid = stepGridOf(problemOf(many(26)));
    expect([1, 2, 3, 4, undefined].map((stages) => isSmall(grid, stages))).toEqual([
      false,
      true,
      true,
      false,
      false,
    ]);
    expect(isSmall(stepGridOf(problemOf(many(27))), 3)).toBe(false);
    expect(isSmall({ ...grid, joins: 1 }, 3)).toBe(false);
  });
});

test("the largest half comes first, then two more at a time, and all at last", () => {
  const grid = stepGridOf(problemOf([1, 5, 2, 6, 3, 4, 1].map((w) => [w, 1] as const)));
  const parts = [...largestFirst(grid)].map(({ items }) => items.map(({ w }) => w / 100));
  expect(parts).toEqual([
    [5, 6, 3, 4],
    [1, 5, 2, 6, 3, 4],
    [1, 5, 2, 6, 3, 4, 1],
  ]);
  expect([...largestFirst(grid)].at(-1)).toBe(grid);
  expect([...largestFirst(stepGridOf(problemOf([[1, 1]])))]).toHaveLength(1);
});

describe("a layer on the way", () => {
  const grid = stepGridOf(
    problemOf([
      [2, 3],
      [3, 1],
    ]),
  );
  const taskOf = (useful: (layer: OpenLayer) => boolean) => ({
    rest: 3,
    y: 100,
    bolt: grid.bolts[0] as StepGrid["bolts"][number],
    first: false,
    useful,
    emit: () => {},
  });

  // By hand, from 1 on, on cloth 6 wide: 2 × 3, then 3 × 1 beside it or below it; or 3 × 1 alone.
  test("tells where its last column begins and ends, across and along", () => {
    const seen = (stages: number) => {
      const layers: OpenLayer[] = [];
      new Layers(grid, stages).each(taskOf((layer) => layers.push({ ...layer }) > 0));
      return layers;
    };
    expect(seen(3)).toEqual([
      { taken: 1, end: 400, below: 400, fromLeft: 600, fromRight: 400 },
      { taken: 3, end: 400, below: 200, fromLeft: 400, fromRight: 100 },
      { taken: 3, end: 500, below: 500, fromLeft: 600, fromRight: 300 },
      { taken: 2, end: 200, below: 200, fromLeft: 600, fromRight: 300 },
    ]);
    // Nothing lies below another in two stages.
    expect(seen(2)).toEqual([
      { taken: 1, end: 400, below: 400, fromLeft: 600, fromRight: 400 },
      { taken: 3, end: 400, below: 400, fromLeft: 400, fromRight: 100 },
      { taken: 2, end: 200, below: 200, fromLeft: 600, fromRight: 300 },
    ]);
  });

  test("there are too many of is told, with as many as were looked at", () => {
    const four = new Layers(grid, 3, 4);
    expect([four.each(taskOf(() => true)), four.nodes]).toEqual([true, 4]);
    const two = new Layers(grid, 3, 2);
    expect([two.each(taskOf(() => true)), two.nodes]).toEqual([false, 3]);
  });
});
