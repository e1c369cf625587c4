import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { expectNear } from "../../../test/near.ts";
import { dualBound } from "./dual-bound.ts";
import {
  type LengthsAnswer,
  type LengthsProblem,
  LengthsSearch,
  solveLengths,
  verifyLengths,
} from "./index.ts";
import { wholeLengths } from "./whole-lengths.ts";

const ENOUGH = 10_000;

function problemOf(cutsMm: readonly number[], over: Partial<LengthsProblem> = {}): LengthsProblem {
  return {
    cuts: cutsMm.map((lengthMm, i) => ({ id: `c${i}`, lengthMm })),
    stock: [{ id: "new", lengthMm: 2438.4, cost: 1 }],
    kerfMm: 3,
    keepMm: 600,
    seed: 1,
    ...over,
  };
}

function planned(answer: LengthsAnswer) {
  if (answer.kind === "infeasible") throw new Error("infeasible");
  return answer;
}

describe("the saw line", () => {
  it("three of 800 come out of one 2,438.4 mm board with two saw lines between, four do not", () => {
    expect(solveLengths(problemOf([800, 800, 800]), 0)).toMatchObject({ kind: "optimal", plan: { cost: 1 } });
    expect(solveLengths(problemOf([800, 800, 800, 800]), 0)).toMatchObject({
      kind: "optimal",
      plan: { cost: 2 },
    });
  });

  it("does not follow the last cut: two of 1,000 and one line need 2,003", () => {
    const bars = (lengthMm: number) =>
      planned(solveLengths(problemOf([1000, 1000], { stock: [{ id: "new", lengthMm, cost: 1 }] }), ENOUGH))
        .plan.cost;
    expect(bars(2003)).toBe(1);
    expect(bars(2002.9)).toBe(2);
  });

  it("lies before the offcut: 1,200 and a line off 2,438.4 leave 1,235.4; 2,437 leave nothing to keep", () => {
    const [bar] = planned(solveLengths(problemOf([1200]), 0)).plan.bars;
    expectNear(bar?.offcutMm ?? 0, 1235.4, 1e-9);
    expect(bar?.kept).toBe(true);
    expect(planned(solveLengths(problemOf([2437]), 0)).plan.bars[0]).toMatchObject({
      offcutMm: 0,
      kept: false,
    });
  });

  it("moves each cut along: 700, 700, 700 begin at 0, 703 and 1,406", () => {
    const [bar] = planned(solveLengths(problemOf([700, 700, 700]), 0)).plan.bars;
    expect(bar?.cuts.map(({ fromMm }) => fromMm)).toEqual([0, 703, 1406]);
  });

  it("thirds of a length that no ruler shows come out of it: 3 × 2,438.4 / 3 without a line", () => {
    const answer = solveLengths(problemOf([2438.4 / 3, 2438.4 / 3, 2438.4 / 3], { kerfMm: 0 }), 0);
    expect(answer).toMatchObject({ kind: "optimal", plan: { cost: 1 } });
  });
});

describe("what is at hand", () => {
  const pieces = (...lengthsMm: number[]) => [
    { id: "new", lengthMm: 2438.4, cost: 10 },
    ...lengthsMm.map((lengthMm, i) => ({ id: `r${i}`, lengthMm, cost: 0, available: 1 })),
  ];

  it("is used before anything is bought, the shortest piece that serves first", () => {
    const { plan } = planned(solveLengths(problemOf([500], { stock: pieces(2000, 600) }), 0));
    expect(plan).toMatchObject({ cost: 0, bars: [{ stockId: "r1", offcutMm: 97, kept: false }] });
  });

  // By hand: 1,000 + 900 fill 1,903 and 1,100 + 850 fill 1,953; first-fit puts the 1,100 on the shorter and buys one.
  it("is shared out so that less is bought than first-fit would", () => {
    const problem = problemOf([1100, 1000, 900, 850], { stock: pieces(1903, 1953) });
    expect(solveLengths(problem, 0)).toMatchObject({ kind: "stopped", plan: { cost: 10 } });
    const answer = solveLengths(problem, ENOUGH);
    expect(answer).toMatchObject({ kind: "optimal", plan: { cost: 0 } });
    expect(verifyLengths(problem, answer)).toEqual([]);
  });

  it("is not used twice", () => {
    const { plan } = planned(solveLengths(problemOf([500, 500], { stock: pieces(700) }), ENOUGH));
    expect(plan.bars.map(({ stockId }) => stockId).sort()).toEqual(["new", "r0"]);
  });
});

describe("several lengths at several prices", () => {
  const stock = [
    { id: "eight", lengthMm: 2400, cost: 8 },
    { id: "twelve", lengthMm: 3600, cost: 11 },
  ];

  it("one long length is cheaper than two short ones for three of 1,190", () => {
    const { plan } = planned(solveLengths(problemOf([1190, 1190, 1190], { stock }), ENOUGH));
    expect(plan).toMatchObject({ cost: 11, bars: [{ stockId: "twelve" }] });
  });

  it("a short one serves for two", () => {
    const { plan } = planned(solveLengths(problemOf([1190, 1190], { stock }), ENOUGH));
    expect(plan).toMatchObject({ cost: 8, bars: [{ stockId: "eight" }] });
  });

  it("a cut longer than any is refused by name", () => {
    const problem = problemOf([1190, 3700], { stock });
    const answer = solveLengths(problem, ENOUGH);
    expect(answer).toEqual({
      kind: "infeasible",
      reason: { kind: "longer-than-stock", cutIds: ["c1"], longestStockMm: 3600 },
    });
    expect(verifyLengths(problem, answer)).toEqual([]);
  });
});

describe("off the reel", () => {
  it("what is at hand takes as much length as it can; the rest is bought to measure", () => {
    const stock = [{ id: "left", lengthMm: 5000, cost: 0, available: 1 }];
    const problem = problemOf([3000, 2600, 2400], { stock, kerfMm: 0, toMeasureCostPerMm: 1 });
    const answer = planned(solveLengths(problem, ENOUGH));
    // By hand: 2,600 + 2,400 fill the 5,000; first-fit would take the 3,000 and leave 5,000 to buy.
    expect(answer).toMatchObject({ kind: "optimal", plan: { cost: 3000, toMeasure: [{ lengthMm: 3000 }] } });
    expect(verifyLengths(problem, answer)).toEqual([]);
  });
});

const smallProblem = fc
  .record({
    cuts: fc.array(fc.integer({ min: 1, max: 20 }), { minLength: 1, maxLength: 7 }),
    prices: fc.tuple(fc.integer({ min: 1, max: 9 }), fc.integer({ min: 1, max: 9 })),
    second: fc.integer({ min: 20, max: 40 }),
    stock: fc.array(fc.integer({ min: 1, max: 30 }), { maxLength: 2 }),
    kerfMm: fc.integer({ min: 0, max: 2 }),
  })
  .map(({ cuts, prices, second, stock, kerfMm }) =>
    problemOf(cuts, {
      stock: [
        { id: "a", lengthMm: 20, cost: prices[0] },
        { id: "b", lengthMm: second, cost: prices[1] },
        ...stock.map((lengthMm, i) => ({ id: `r${i}`, lengthMm, cost: 0, available: 1 })),
      ],
      kerfMm,
      keepMm: 5,
    }),
  );

describe("any problem", () => {
  // Found by the property below: the dives alone leave 8. 11 + 6 + 6 fill what is at hand, 11 + 10 one of 21 at 6.
  it("of five cuts is not left to the dives", () => {
    const stock = [
      { id: "a", lengthMm: 20, cost: 4 },
      { id: "b", lengthMm: 21, cost: 6 },
      { id: "r", lengthMm: 23, cost: 0, available: 1 },
    ];
    const problem = problemOf([6, 11, 6, 11, 10], { stock, kerfMm: 0, keepMm: 5 });
    expect(solveLengths(problem, ENOUGH)).toMatchObject({ kind: "optimal", plan: { cost: 6 } });
  });

  it("agrees with trying every placing", () => {
    fc.assert(
      fc.property(smallProblem, (problem) => {
        const answer = planned(solveLengths(problem, ENOUGH));
        expect(verifyLengths(problem, answer)).toEqual([]);
        const best = leastByTrial(problem);
        expect(answer.bound.cost).toBeLessThanOrEqual(best);
        expect(answer.plan.cost).toBeGreaterThanOrEqual(best);
        // Of so few cuts every placing is looked at in the end.
        expect(answer.kind).toBe("optimal");
        expect(answer.plan.cost).toBe(best);
      }),
      { numRuns: 150 },
    );
  });

  it("stopped after any number of steps the plan holds and never gets worse, nor the bound", () => {
    const sizes = fc.array(fc.integer({ min: 150, max: 2300 }), { minLength: 1, maxLength: 40 });
    fc.assert(
      fc.property(sizes, (cutsMm) => {
        const problem = problemOf(cutsMm);
        const search = new LengthsSearch(problem);
        let cost = search.cost;
        let bound = search.bound.cost;
        do {
          expect(verifyLengths(problem, search.answer())).toEqual([]);
          expect(search.cost).toBeLessThanOrEqual(cost);
          expect(search.bound.cost).toBeGreaterThanOrEqual(bound);
          [cost, bound] = [search.cost, search.bound.cost];
        } while (search.step());
        expect(solveLengths(problem, ENOUGH)).toEqual(search.answer());
      }),
      { numRuns: 40 },
    );
  });
});

describe("the bound from worths", () => {
  it("holds whatever each cut is said to be worth", () => {
    const duals = fc.array(fc.double({ min: 0, max: 12, noNaN: true }), { minLength: 7, maxLength: 7 });
    fc.assert(
      fc.property(smallProblem, duals, (problem, worths) => {
        expect(dualBound(wholeLengths(problem).whole, worths)).toBeLessThanOrEqual(leastByTrial(problem));
      }),
      { numRuns: 150 },
    );
  });
});

describe("the check of a plan", () => {
  const problem = problemOf([800, 700, 600, 900, 1500], {
    stock: [
      { id: "new", lengthMm: 2438.4, cost: 10 },
      { id: "r", lengthMm: 1000, cost: 0, available: 1 },
    ],
  });
  const good = planned(solveLengths(problem, ENOUGH));
  type Bars = typeof good.plan.bars;
  const withBars = (change: (bars: Bars) => void) => {
    const answer = structuredClone(good);
    change(answer.plan.bars);
    return verifyLengths(problem, answer);
  };
  const firstOf = (bars: Bars) => {
    const bar = bars.find(({ cuts }) => cuts.length > 1);
    if (bar === undefined) throw new Error("no bar of two");
    return bar;
  };

  it("passes what the search gives", () => expect(verifyLengths(problem, good)).toEqual([]));

  it.each<[string, (bars: Bars) => void]>([
    ["a cut left out", (bars) => void firstOf(bars).cuts.pop()],
    ["a cut made twice", (bars) => void firstOf(bars).cuts.push({ id: "c0", lengthMm: 800, fromMm: 0 })],
    ["a cut made shorter", (bars) => void Object.assign(firstOf(bars).cuts[0] ?? {}, { lengthMm: 10 })],
    ["a saw line forgotten", (bars) => void Object.assign(firstOf(bars).cuts[1] ?? {}, { fromMm: 800 })],
    ["an offcut made longer", (bars) => void Object.assign(firstOf(bars), { offcutMm: 2000 })],
    ["a length that is not there", (bars) => void Object.assign(firstOf(bars), { stockId: "other" })],
    [
      "a piece in stock used twice",
      (bars) => {
        for (const bar of bars) Object.assign(bar, { stockId: "r", stockMm: 1000 });
      },
    ],
    ["a bar too many", (bars) => void bars.push({ ...firstOf(bars), cuts: [] })],
  ])("finds %s", (_, change) => expect(withBars(change)).not.toEqual([]));

  it("finds a bound above the cost, a wrong cost and a wrong claim", () => {
    expect(verifyLengths(problem, { ...good, bound: { cost: 99, by: "patterns" } })).not.toEqual([]);
    expect(verifyLengths(problem, { ...good, plan: { ...good.plan, cost: 1 } })).not.toEqual([]);
    expect(
      verifyLengths(problem, { kind: "optimal", plan: good.plan, bound: { cost: 0, by: "material" } }),
    ).toEqual(["called optimal above its bound"]);
  });
});

/** The least cost by trying every placing of every cut: small cases only. */
function leastByTrial({ cuts, stock, kerfMm }: LengthsProblem): number {
  const order = cuts.map(({ lengthMm }) => lengthMm).sort((a, b) => b - a);
  const left = stock.map(({ available = order.length }) => available);
  let best = Number.POSITIVE_INFINITY;
  const place = (index: number, rooms: readonly number[], cost: number): void => {
    if (cost >= best) return;
    const cut = order[index];
    if (cut === undefined) {
      best = cost;
      return;
    }
    const tried = new Set<number>();
    rooms.forEach((room, i) => {
      if (room < cut || tried.has(room)) return;
      tried.add(room);
      place(
        index + 1,
        rooms.map((one, j) => (j === i ? one - cut - kerfMm : one)),
        cost,
      );
    });
    stock.forEach((one, s) => {
      if ((left[s] as number) === 0 || one.lengthMm < cut) return;
      left[s] = (left[s] as number) - 1;
      place(index + 1, [...rooms, one.lengthMm - cut - kerfMm], cost + one.cost);
      left[s] = (left[s] as number) + 1;
    });
  };
  place(0, [], 0);
  return best;
}
