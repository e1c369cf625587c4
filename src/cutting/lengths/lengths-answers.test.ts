import { describe, expect, test } from "vitest";
import { loadHighs } from "../../cli/load-highs.ts";
import { chance } from "../chance.ts";
import { isProved } from "../is-proved.ts";
import { solveWithHighs } from "../solve-with-highs.ts";
import type { WholeAnswer } from "../whole-programme.ts";
import {
  firstLengths,
  type LengthsAnswer,
  type LengthsProblem,
  LengthsSearch,
  proveLengths,
  solveLengths,
  verifyLengths,
} from "./index.ts";
import { materialBound } from "./material-bound.ts";
import { wholeLengths } from "./whole-lengths.ts";

const BAR = { id: "bar", lengthMm: 1000, cost: 3 };
const problemOf = (cutsMm: readonly number[], more: Partial<LengthsProblem> = {}): LengthsProblem => ({
  cuts: cutsMm.map((lengthMm, n) => ({ id: `c${n}`, lengthMm })),
  stock: [BAR],
  kerfMm: 0,
  keepMm: 200,
  seed: 1,
  ...more,
});

/** Bars of 1000 mm cut in three without waste: their number is the least, as the cuts fill them (Falkenauer 1996, class t). */
function triplets(bars: number, seed: number): number[] {
  const draw = chance(seed);
  const cuts = Array.from({ length: bars }, () => {
    const first = 380 + Math.floor(draw() * 110);
    const second = 250 + Math.floor(draw() * ((1000 - first) / 2 - 250));
    return [first, second, 1000 - first - second];
  }).flat();
  // In no order.
  return cuts
    .map((mm, n) => ({ mm, at: (n * 7919) % 1009 }))
    .sort((a, b) => a.at - b.at)
    .map(({ mm }) => mm);
}

describe("bars cut without waste are filled again", () => {
  test.each([4, 8, 12, 20])("%d of them, in a counted number of steps", (bars) => {
    const costs = [1, 2, 3].map((seed) => {
      const problem = problemOf(triplets(bars, seed));
      const answer = solveLengths(problem, 3000);
      if (answer.kind === "infeasible") throw new Error("infeasible");
      expect(verifyLengths(problem, answer)).toEqual([]);
      expect(answer.bound.cost).toBe(3 * bars);
      return answer.plan.cost / (3 * bars);
    });
    // One bar too many in three jobs at the most, and none of the few.
    expect(costs.reduce((a, b) => a + b, 0)).toBeLessThanOrEqual(3 + (bars > 8 ? 1 / bars : 0) + 1e-9);
  });
});

describe("the exact programme after the search", () => {
  // By hand: 400 + 300 + 300 twice fills two; first-fit puts the 400s together and takes three.
  const problem = problemOf([400, 400, 300, 300, 300, 300]);

  test("finds the plan and proves it; of a settled search nothing is asked", async () => {
    const solve = solveWithHighs(await loadHighs());
    const search = new LengthsSearch(problem);
    expect(search.answer()).toMatchObject({ kind: "stopped", plan: { cost: 9 }, bound: { cost: 6 } });
    expect(proveLengths(search, solve)).toBe(true);
    expect(search.answer()).toMatchObject({ kind: "optimal", plan: { cost: 6 }, bound: { cost: 6 } });
    expect(search.done).toBe(false);
    expect([search.step(), search.done]).toEqual([false, true]);
    expect(proveLengths(search, () => ({ bound: Number.NaN }))).toBe(false);
  });

  test("may stop half a step above the bound; what it gives is taken only where it is better", () => {
    const answered = (answer: WholeAnswer) => {
      const search = new LengthsSearch(problem);
      let target = 0;
      const isTried = proveLengths(search, (_, to) => {
        target = to;
        return answer;
      });
      return { isTried, target, cost: search.cost, bound: search.bound };
    };
    expect(answered({ bound: 0 })).toMatchObject({ isTried: true, target: 7.5, cost: 9, bound: { cost: 6 } });
    // 6.1 is raised to the next multiple of 3.
    expect(answered({ bound: 6.1 })).toMatchObject({ cost: 9, bound: { cost: 9, by: "arc-flow" } });
    expect(answered({ bound: Number.POSITIVE_INFINITY }).bound.cost).toBe(6);
    // As fewer lengths than first-fit has: none of the cuts in flow at all is no plan.
    expect(answered({ bound: Number.NEGATIVE_INFINITY }).bound.cost).toBe(6);
  });

  test("is not begun where it would be too large", () => {
    const draw = chance(5);
    const many = problemOf(
      Array.from({ length: 150 }, () => 20.001 + Math.floor(draw() * 300_000) / 1000),
      { kerfMm: 3 },
    );
    const search = new LengthsSearch(many);
    const fail = () => {
      throw new Error("asked");
    };
    expect(search.isSettled || !proveLengths(search, fail)).toBe(true);
  });
});

describe("a plan found elsewhere", () => {
  // By hand: 1,000 + 900 and 1,100 + 850 fill what is at hand; first-fit buys a bar beside that.
  const learnt = (atHand: number, bought: number) => {
    const search = new LengthsSearch(
      problemOf([1100, 1000, 900, 850], {
        stock: [
          { ...BAR, lengthMm: 2438, cost: bought },
          ...[1900, 1950].map((lengthMm, n) => ({ id: `r${n}`, lengthMm, cost: atHand, available: 1 })),
        ],
      }),
    );
    expect(search.cost).toBe(2 * atHand + bought);
    search.learn({
      bars: [
        { stock: 1, types: [1, 2] },
        { stock: 2, types: [0, 3] },
      ],
    });
    return search.cost;
  };

  test("is taken where it costs less by more than a billionth of it, or of 1", () => {
    expect(learnt(1, 1)).toBe(2);
    expect(learnt(1, 2.5e-9)).toBe(2);
    expect(learnt(1, 1.5e-9)).toBe(2 + 1.5e-9);
    expect(learnt(0.1, 1.5e-9)).toBe(0.2);
    expect(learnt(0.1, 0.5e-9)).toBe(0.2 + 0.5e-9);
  });
});

describe("a plan at once", () => {
  test("is first-fit's, without a search", () => {
    const problem = problemOf([600, 500, 400, 300]);
    // By hand: 600 + 400, 500 + 300.
    expect(firstLengths(problem)?.bars.map(({ cuts }) => cuts.map(({ lengthMm }) => lengthMm))).toEqual([
      [600, 400],
      [500, 300],
    ]);
    expect(firstLengths(problemOf([1001]))).toBeUndefined();
  });
});

test("of more lengths and pieces at hand than a programme holds the first plan stands, with its bound", () => {
  const atHand = Array.from({ length: 320 }, (_, n) => ({
    id: `r${n}`,
    lengthMm: 50 + n,
    cost: 1,
    available: 1,
  }));
  const search = new LengthsSearch(
    problemOf(
      Array.from({ length: 300 }, (_, n) => 301 + n),
      { stock: [BAR, ...atHand] },
    ),
  );
  const { cost, bound } = search;
  expect(bound.by).toBe("material");
  expect(bound.cost).toBeLessThan(cost);
  expect([search.step(), search.cost, search.bound]).toEqual([false, cost, bound]);
  expect(search.answer()).toMatchObject({ kind: "feasible" });
});

describe("what makes no sense", () => {
  test.each<[string, LengthsProblem]>([
    ["invalid cut lengthMm: 0", problemOf([500, 0])],
    ["invalid cut lengthMm: NaN", problemOf([Number.NaN])],
    ["invalid stock lengthMm: 0", problemOf([500], { stock: [{ ...BAR, lengthMm: 0 }] })],
    ["invalid stock cost: -1", problemOf([500], { stock: [{ ...BAR, cost: -1 }] })],
    ["invalid kerfMm: -1", problemOf([500], { kerfMm: -1 })],
  ])("%s", (words, problem) => {
    expect(() => new LengthsSearch(problem)).toThrow(words);
  });

  test("does not lie at nothing: stock that is free, a saw line that is none", () => {
    expect(solveLengths(problemOf([500], { stock: [{ ...BAR, cost: 0 }] }), 10)).toMatchObject({
      kind: "optimal",
    });
  });
});

describe("the check", () => {
  const problem = problemOf([600, 390], {
    stock: [BAR, { id: "left", lengthMm: 700, cost: 0, available: 1 }],
    kerfMm: 4,
  });
  const answer: Exclude<LengthsAnswer, { kind: "infeasible" }> = {
    kind: "feasible",
    plan: {
      bars: [
        {
          stockId: "bar",
          stockMm: 1000,
          cuts: [
            { id: "c0", lengthMm: 600, fromMm: 0 },
            { id: "c1", lengthMm: 390, fromMm: 604 },
          ],
          offcutMm: 2,
          kept: false,
        },
      ],
      toMeasure: [],
      cost: 3,
    },
    bound: { cost: 2, by: "material" },
    gap: 1 / 3,
  };
  type Bar = (typeof answer.plan.bars)[number];
  const [bar] = answer.plan.bars as [Bar];
  const withBar = (more: Partial<Bar>, plan: Partial<typeof answer.plan> = {}) =>
    verifyLengths(problem, { ...answer, plan: { ...answer.plan, bars: [{ ...bar, ...more }], ...plan } });
  const [first, second] = bar.cuts as [Bar["cuts"][number], Bar["cuts"][number]];

  test("passes what is right, and names what is not, each with its numbers", () => {
    expect(verifyLengths(problem, answer)).toEqual([]);
    expect(withBar({ stockMm: 999 })).toEqual(["bar is 1000 mm long, not 999"]);
    expect(withBar({ stockId: "gone" })).toContain("there is no gone");
    expect(withBar({ offcutMm: 3 })).toEqual(["the offcut of bar is 2 mm, not 3"]);
    expect(withBar({ kept: true })).toEqual(["an offcut of bar is misjudged"]);
    expect(withBar({ cuts: [first, { ...second, fromMm: 600 }] })).toEqual([
      "c1 begins at 600 mm, not at 604",
    ]);
    expect(withBar({ cuts: [first, { ...second, lengthMm: 380 }], offcutMm: 12 })).toEqual([
      "c1 is 380 mm, not 390",
    ]);
    expect(withBar({ cuts: [first], offcutMm: 396, kept: true })).toEqual(["c1 is not cut"]);
    expect(withBar({ cuts: [first, { ...second, id: "c0" }] })).toContain(
      "c0 is cut twice or was not asked for",
    );
    expect(withBar({}, { cost: 4 })).toContain("the cost is 3, not 4");
  });

  test("an offcut is kept from the length asked on, and none is", () => {
    const offcut = (keepMm: number, kept: boolean) =>
      verifyLengths(
        { ...problem, keepMm },
        { ...answer, plan: { ...answer.plan, bars: [{ ...bar, kept }] } },
      );
    expect([offcut(2, true), offcut(2.1, false), offcut(1, true)]).toEqual([[], [], []]);
    expect(offcut(2, false)).toHaveLength(1);
    expect(offcut(2.1, true)).toHaveLength(1);
    const full = { ...bar, stockMm: 994, offcutMm: 0, kept: false };
    const exact = { ...problem, keepMm: 0, stock: [{ ...BAR, lengthMm: 994 }] };
    expect(verifyLengths(exact, { ...answer, plan: { ...answer.plan, bars: [full] } })).toEqual([]);
  });

  test("a cut over the end, a bar for nothing, a piece used twice, a cut that cannot be bought", () => {
    const short = { ...problem, stock: [{ ...BAR, lengthMm: 993 }] };
    const over = { ...answer, plan: { ...answer.plan, bars: [{ ...bar, stockMm: 993, offcutMm: 0 }] } };
    expect(verifyLengths(short, over)).toEqual(["c1 runs over the end of bar"]);
    const none = { ...bar, cuts: [], offcutMm: 1000, kept: true };
    const two = { ...answer.plan, bars: [bar, none], cost: 6 };
    expect(verifyLengths(problem, { ...answer, plan: two, gap: 4 / 6 })).toEqual([
      "bar is taken for nothing",
    ]);
    const left = (cuts: Bar["cuts"]): Bar => ({
      stockId: "left",
      stockMm: 700,
      cuts,
      offcutMm: 0,
      kept: false,
    });
    const twice = [
      { ...left([first]), offcutMm: 96 },
      { ...left([{ ...second, fromMm: 0 }]), offcutMm: 306, kept: true },
    ];
    const free = { ...answer.plan, bars: twice, cost: 0 };
    expect(
      verifyLengths(problem, { ...answer, plan: free, bound: { cost: 0, by: "material" }, gap: 0 }),
    ).toEqual(["2 of left are cut, 1 are there"]);
    const measured = {
      ...answer.plan,
      bars: [{ ...bar, cuts: [first], offcutMm: 396, kept: true }],
      toMeasure: [{ id: "c1", lengthMm: 390 }],
    };
    expect(verifyLengths(problem, { ...answer, plan: measured })).toEqual([
      "a cut is bought to measure that cannot be",
    ]);
    const sold = { ...problem, toMeasureCostPerMm: 0.1 };
    expect(verifyLengths(sold, { ...answer, plan: { ...measured, cost: 42 }, gap: 40 / 42 })).toEqual([]);
  });

  test("a bound above the cost, a gap that is another, a claim that is none", () => {
    const bound = { cost: 4, by: "material" as const };
    expect(verifyLengths(problem, { ...answer, bound, gap: -1 / 3 })).toEqual([
      "the bound 4 lies above the cost 3",
    ]);
    expect(verifyLengths(problem, { ...answer, gap: 0.5 })).toEqual(["the gap is not 0.5"]);
    expect(verifyLengths(problem, { ...answer, gap: 0.1 })).toEqual(["the gap is not 0.1"]);
    const { gap: _, ...rest } = answer;
    expect(verifyLengths(problem, { ...rest, kind: "optimal" })).toEqual(["called optimal above its bound"]);
    expect(verifyLengths(problem, { ...rest, kind: "optimal", bound: { cost: 3, by: "material" } })).toEqual(
      [],
    );
  });

  test("a refusal names cuts that nothing sold holds", () => {
    const refused = (cutIds: string[], cutsMm: number[]) =>
      verifyLengths(problemOf(cutsMm, { stock: problem.stock }), {
        kind: "infeasible",
        reason: { kind: "longer-than-stock", cutIds, longestStockMm: 1000 },
      });
    expect(refused(["c1"], [600, 1001])).toEqual([]);
    expect(refused([], [600, 1001])).toEqual(["refused without a reason"]);
    expect(refused(["c0"], [1000])).toEqual(["c0 is refused, though it fits a length that is sold"]);
    expect(refused(["c9"], [1001])).toEqual(["c9 is refused, though it fits a length that is sold"]);
    const atHand = [{ id: "left", lengthMm: 2000, cost: 0, available: 1 }, BAR];
    const answer = solveLengths(problemOf([1500, 1500], { stock: atHand }), 10);
    expect(answer).toEqual({
      kind: "infeasible",
      reason: { kind: "longer-than-stock", cutIds: ["c0", "c1"], longestStockMm: 1000 },
    });
  });
});

describe("whole cells", () => {
  test("of cuts and stock are what they have in common, the saw line among them", () => {
    const { whole, typeOf } = wholeLengths(
      problemOf([300, 597, 300], {
        kerfMm: 3,
        stock: [
          { ...BAR, cost: 4 },
          { ...BAR, cost: 6 },
        ],
      }),
    );
    // 600 and 303 mm are 200 and 101 times 3 mm; 1,003 mm of stock hold 334 of those.
    expect(whole).toMatchObject({ sizes: [200, 101], demand: [1, 2], costStep: 2 });
    expect(whole.stock.map(({ size }) => size)).toEqual([334, 334]);
    expect(typeOf).toEqual([1, 0, 1]);
  });

  test.each([
    [[1, 2], 1],
    [[1.5, 2], 0.5],
    [[0.25, 0.1], 0.05],
    [[0.004, 0.006], 0.002],
    [[1 / 3, 1], 0],
    [[0, 0], 0],
  ])("costs of %j have a common measure of %d", (costs, step) => {
    const stock = costs.map((cost, n) => ({ ...BAR, id: `s${n}`, cost }));
    expect(wholeLengths(problemOf([300], { stock })).whole.costStep).toBeCloseTo(step, 9);
    expect(wholeLengths(problemOf([300], { stock, toMeasureCostPerMm: 1 })).whole.costStep).toBe(0);
  });

  test("what lies within a millionth of its cost is proved", () => {
    expect([isProved(5, 5), isProved(5, 4.99), isProved(1e6, 1e6 - 0.9), isProved(1e6, 1e6 - 1.1)]).toEqual([
      true,
      false,
      true,
      false,
    ]);
    expect([isProved(0, -1e-10), isProved(0.01, 0.01 - 5e-10)]).toEqual([true, true]);
  });
});

describe("what lengths laid end to end prove", () => {
  const bound = (...given: Parameters<typeof problemOf>) =>
    materialBound(wholeLengths(problemOf(...given)).whole);
  const left = (lengthMm: number, cost: number, available: number) => ({
    id: "left",
    lengthMm,
    cost,
    available,
  });

  // By hand, bars of 1000 at 3.
  test("are whole bars, with those at hand first as far as they are cheaper", () => {
    expect(bound([500, 500, 1])).toBe(6);
    expect(bound([500, 500])).toBe(3);
    expect(bound([500, 500, 400], { stock: [BAR, left(400, 0, 1)] })).toBe(3);
    expect(bound([500, 500, 500], { stock: [BAR, left(400, 0, 1)] })).toBe(6);
    expect(bound([500, 500], { stock: [left(500, 1, 2), BAR] })).toBe(2);
    expect(bound([500, 500], { stock: [left(500, 2, 2), BAR] })).toBe(3);
    expect(bound([500], { stock: [BAR, { ...BAR, id: "long", lengthMm: 2000, cost: 4 }] })).toBe(1);
    // Nothing is sold: 500 of 600 at 2, in whole costs.
    expect(bound([500], { stock: [left(600, 2, 1)] })).toBe(2);
    expect(bound([500, 250], { stock: [], toMeasureCostPerMm: 0.5 })).toBe(375);
    expect(bound([500, 250], { stock: [BAR], toMeasureCostPerMm: 0.001 })).toBeCloseTo(0.75, 9);
  });

  test("or more, where cuts do not go together (Fekete and Schepers)", () => {
    // Of cuts above a half each needs a bar of its own; of those above a third two share one.
    expect(bound([510, 510, 510])).toBe(9);
    expect(bound([340, 340, 340, 340, 340])).toBe(9);
    expect(bound([600, 600, 410, 410])).toBe(9);
    // 260 goes beside no 750: by U(260) each of those counts as a whole bar.
    expect(bound([750, 750, 260])).toBe(9);
    expect(bound([510, 510, 510], { stock: [BAR, left(600, 0, 1)] })).toBe(6);
  });
});
