import { describe, expect, test } from "vitest";
import {
  type BoltPlan,
  type ClothCutPlan,
  ClothSearch,
  planByHand,
  verifyCloth,
} from "../../src/cutting/cloth/index.ts";
import { certified, HOPPER_C, meanByClass, STRIPS, type StripInstance, stripProblem } from "./strips.ts";

/** Hopper and Turton 2001 (EJOR 128, 34–57), Hopper 2000, Kröger 1995, Burke et al. 2004: see strip-2d.json. */
describe("published layouts", () => {
  test.each(STRIPS)("$id passes the check as it was published", (strip) => {
    const { plan, faults } = planByHand(stripProblem(strip), [
      { boltId: "strip", placements: certified(strip) },
    ]);
    expect(faults).toEqual([]);
    expect(plan.cost).toBe(strip.height);
    expect(plan.bolts[0]?.cuts.length).toBeGreaterThanOrEqual(strip.items.length - 1);
  });

  const strip = STRIPS.find(({ id }) => id === "C1_1") as StripInstance;
  const problem = stripProblem(strip);
  const { plan } = planByHand(problem, [{ boltId: "strip", placements: certified(strip) }]);
  const [bolt] = plan.bolts as [BoltPlan];
  const [one] = bolt.placements as [BoltPlan["placements"][number]];
  const withBolt = (changed: Partial<BoltPlan>): ClothCutPlan => ({
    ...plan,
    bolts: [{ ...bolt, ...changed }],
  });
  const withPiece = (changed: Partial<typeof one>) =>
    withBolt({
      placements: bolt.placements.map((placed) => (placed === one ? { ...placed, ...changed } : placed)),
    });

  const broken: [string, ClothCutPlan][] = [
    ["a piece moved aside", withPiece({ xMm: one.xMm + 1 })],
    ["a piece moved along", withPiece({ yMm: one.yMm + 1 })],
    ["a piece beyond the selvedge", withPiece({ xMm: 19 })],
    ["a piece before the end", withPiece({ yMm: -1 })],
    ["a piece too narrow", withPiece({ widthMm: one.widthMm - 1 })],
    ["a piece turned against its grain", withPiece({ turn: 90 })],
    ["a piece upside down", withPiece({ turn: 180 })],
    ["a piece for which nobody asked", withPiece({ pieceId: "p99" })],
    ["a piece cut twice", withBolt({ placements: [...bolt.placements, one] })],
    ["a piece left out", withBolt({ placements: bolt.placements.slice(1) })],
    ["a cut left out", withBolt({ cuts: bolt.cuts.slice(1) })],
    ["the last cut left out", withBolt({ cuts: bolt.cuts.slice(0, -1) })],
    ["cuts in another order", withBolt({ cuts: bolt.cuts.toReversed() })],
    ["a cut elsewhere", withBolt({ cuts: bolt.cuts.map((cut) => ({ ...cut, atMm: cut.atMm + 0.5 })) })],
    ["no cuts", withBolt({ cuts: [] })],
    ["a sheet not accounted for", withBolt({ leaves: bolt.leaves.slice(1) })],
    ["less length than the pieces need", withBolt({ usedMm: bolt.usedMm - 1 })],
    ["another cost", { ...plan, cost: plan.cost - 1 }],
    ["another bolt", withBolt({ boltId: "other" })],
    ["a bound above the cost", { ...plan, bound: { cost: plan.cost + 1, which: "area" } }],
    ["a plan called optimal too early", { ...plan, status: "optimal", bound: { cost: 19, which: "area" } }],
  ];
  test.each(broken)("the check finds %s", (_what, wrong) => {
    expect(verifyCloth(problem, plan)).toEqual([]);
    expect(verifyCloth(problem, wrong)).not.toEqual([]);
  });

  test("the check counts stages: this layout needs more than two", () => {
    const strict = { ...problem, cutting: { kind: "straight" as const, stages: 2 } };
    expect(verifyCloth(strict, plan)).not.toEqual([]);
  });

  test("the check finds a flaw, a gap and a nap that the plan did not heed", () => {
    const [strict] = problem.bolts as [(typeof problem.bolts)[number]];
    const flaw = { xMm: one.xMm, yMm: one.yMm, widthMm: 0.5, lengthMm: 0.5 };
    expect(verifyCloth({ ...problem, bolts: [{ ...strict, flaws: [flaw] }] }, plan)).toHaveLength(1);
    expect(verifyCloth({ ...problem, gapMm: 0.2 }, plan)).not.toEqual([]);
  });
});

describe("search on published strips", () => {
  /** Plans tried: well under a second on one thread of a desk machine of 2020. */
  const BUDGET = 400_000;

  test.each(HOPPER_C.filter(({ id }) => /^C[123]/.test(id)))(
    "$id comes down to its proven optimum",
    (strip) => {
      const search = new ClothSearch(stripProblem(strip));
      while (search.cost > strip.guillotine.best && search.evaluations < BUDGET && search.improve(2000));
      const answer = search.answer();
      if (!("cost" in answer)) throw new Error(JSON.stringify(answer));
      expect(answer.cost).toBe(strip.guillotine.best);
      // C1_2, C2_2 and C3_2 lie one above the bound that the search knows of: best, but not proved by it.
      expect(answer.status).toBe(answer.cost === strip.areaOverW ? "optimal" : "feasible");
    },
  );

  test("no plan is better than what is known to be possible, and the bound is below it", () => {
    for (const strip of STRIPS) {
      const answer = searched(strip, 1000);
      expect(answer.cost).toBeGreaterThanOrEqual(strip.guillotine.lowerBound);
      expect(answer.bound.cost).toBeLessThanOrEqual(strip.guillotine.best);
      expect(answer.bound.cost).toBeGreaterThanOrEqual(Math.ceil(strip.areaOverW - 1e-9));
    }
  });

  /** Shelves reach 26.0 %, local search over layers 3.66 % in 2 s on the same set (our trials of these methods). */
  test("lies within a few hundredths of the height without waste after some thousand plans", () => {
    const gaps = HOPPER_C.map((strip) => {
      const { cost } = searched(strip, 12_000);
      return { id: strip.id, gap: cost / strip.areaOverW - 1 };
    });
    expect(meanByClass(gaps)).toBeLessThan(0.04);
  });

  test("pieces wider than the strip are turned where their grain allows it, and are impossible where not", () => {
    const turned = stripProblem({
      id: "turned",
      W: 20,
      items: [
        [30, 10],
        [30, 10],
        [5, 5],
      ],
    });
    expect(new ClothSearch(turned).answer()).toMatchObject({ status: "infeasible", pieceIds: ["p0", "p1"] });
    const pieces = turned.pieces.map((piece) => ({
      ...piece,
      grain: "free" as const,
      nap: "either" as const,
    }));
    const search = new ClothSearch({ ...turned, pieces });
    search.improve(1000);
    // Two strips of 30 side by side fill the width; the square lies below.
    expect(search.answer()).toMatchObject({ status: "optimal", cost: 35 });
  });

  function searched(strip: StripInstance, evaluations: number): ClothCutPlan {
    const search = new ClothSearch(stripProblem(strip));
    search.improve(evaluations);
    const answer = search.answer();
    if (!("cost" in answer)) throw new Error(JSON.stringify(answer));
    return answer;
  }
});
