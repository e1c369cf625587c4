import { stepGridOf } from "./grid.ts";
import { cutUpByHand } from "./lay-out.ts";
import { quickBound } from "./lower-bound.ts";
import type { Bound, ClothCutPlan, ClothProblem, LaidOnBolt } from "./problem.ts";
import { verifyCloth } from "./verify.ts";

/**
 * A plan that a person has laid: its cuts and cost, and what is wrong with it, nothing when it can be cut.
 *
 * @param bound what a search has proved of the problem; without it the areas are looked at
 * @param otherLots lot groups that were let go from the lot they are bound to
 */
export function planByHand(
  problem: ClothProblem,
  laid: readonly LaidOnBolt[],
  bound?: Bound,
  otherLots: ClothCutPlan["otherLots"] = [],
): { plan: ClothCutPlan; faults: string[] } {
  const grid = stepGridOf(problem);
  const bolts = laid.flatMap(({ boltId, placements }) => {
    const bolt = placements.length > 0 ? cutUpByHand(problem, grid, boltId, placements) : undefined;
    return bolt ? [bolt] : [];
  });
  const costOf = (id: string) => problem.bolts.find((bolt) => bolt.id === id)?.costPerMm ?? 0;
  const cost = bolts.reduce((sum, { boltId, usedMm }) => sum + usedMm * costOf(boltId), 0);
  const proved = bound ?? quickBound(grid);
  const plan: ClothCutPlan = {
    status: "feasible",
    bolts,
    cost,
    bound: proved,
    gap: proved.cost > 0 ? (cost - proved.cost) / proved.cost : 0,
    evaluations: 0,
    ...(otherLots.length > 0 ? { otherLots } : {}),
  };
  // Who lays everything by hand holds nothing.
  const { held: _, ...free } = problem;
  return { plan, faults: verifyCloth(free, plan) };
}
