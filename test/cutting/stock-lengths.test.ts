import { describe, expect, it } from "vitest";
import { loadHighs } from "../../src/cli/load-highs.ts";
import {
  LengthsSearch,
  proveLengths,
  solveLengths,
  solveWithHighs,
  verifyLengths,
} from "../../src/cutting/index.ts";
import { arcFlow, barsOfFlow } from "../../src/cutting/lengths/arc-flow.ts";
import { lengthsProblem, STOCK_INSTANCES, stockInstance } from "./stock-lengths.ts";

const ENOUGH = 100_000;

describe("published instances of cutting stock", () => {
  // Best known numbers of bars: data/Bounds.zip of rafaelmartinelli/BPPLib.jl (MIT), all with lower = upper bound.
  it.each(STOCK_INSTANCES.filter(({ id }) => id !== "Hard28_BPP14"))(
    "$id ($reference): $bestKnownBars bars",
    (instance) => {
      const problem = lengthsProblem(instance);
      const answer = solveLengths(problem, ENOUGH);
      expect(verifyLengths(problem, answer)).toEqual([]);
      if (answer.kind === "infeasible") throw new Error(answer.kind);
      expect(answer.plan.cost).toBe(instance.bestKnownBars);
      expect(answer.bound.cost).toBeLessThanOrEqual(instance.bestKnownBars);
    },
  );

  it.each(["Falkenauer_u120_00", "N1C1W1_A", "N2W1B1R0"])("%s is proved", (id) => {
    expect(solveLengths(lengthsProblem(stockInstance(id)), ENOUGH).kind).toBe("optimal");
  });

  // Its fractional optimum is 14.9998 and its whole one 16 (Wäscher & Gau 1996): bound 15 is the best that patterns give.
  it("TEST0065 takes 16 bars and does not call that optimal with a bound of 15", () => {
    const answer = solveLengths(lengthsProblem(stockInstance("Waescher_TEST0065")), ENOUGH);
    expect(answer).toMatchObject({ kind: "feasible", bound: { cost: 15 }, gap: 1 / 16 });
  });

  it("BPP14 stopped early keeps a plan no worse than one bar over the 62 known, and says that it was stopped", () => {
    const problem = lengthsProblem(stockInstance("Hard28_BPP14"));
    const answer = solveLengths(problem, 50);
    expect(verifyLengths(problem, answer)).toEqual([]);
    expect(answer.kind).toBe("stopped");
    if (answer.kind === "stopped") {
      expect(answer.plan.cost).toBeGreaterThanOrEqual(62);
      expect(answer.plan.cost).toBeLessThanOrEqual(63);
      expect(answer.bound.cost).toBeLessThanOrEqual(62);
    }
  });
});

describe("arc flow in HiGHS", () => {
  it.each(["Falkenauer_u120_00", "N1C1W1_A"])(
    "%s: the second route gives the known number too",
    async (id) => {
      const instance = stockInstance(id);
      // Begins from nothing, so that the flow must find plan and bound by itself.
      const { whole } = new LengthsSearch(lengthsProblem(instance));
      const flow = arcFlow(whole, 10_000);
      if (flow === undefined) throw new Error("no flow");
      const { values, bound } = solveWithHighs(await loadHighs())(flow.programme, 0);
      expect(Math.ceil(bound - 1e-6)).toBe(instance.bestKnownBars);
      expect(values && barsOfFlow(whole, flow, values)).toHaveLength(instance.bestKnownBars);
    },
  );

  // By hand: 4 + 3 + 3 twice fills two of 10; first-fit puts 4 + 4 together and takes three.
  it("finds and proves two bars of 10 for 4, 4, 3, 3, 3, 3 where first-fit alone takes three", async () => {
    const problem = lengthsProblem({
      ...stockInstance("N1C1W1_A"),
      stockLength: 10,
      items: [
        [4, 2],
        [3, 4],
      ],
    });
    const search = new LengthsSearch(problem);
    expect(search.answer()).toMatchObject({ kind: "stopped", bound: { cost: 2 }, plan: { cost: 3 } });
    expect(proveLengths(search, solveWithHighs(await loadHighs()))).toBe(true);
    const answer = search.answer();
    expect(answer).toMatchObject({ kind: "optimal", plan: { cost: 2 } });
    expect(verifyLengths(problem, answer)).toEqual([]);
  });
});
