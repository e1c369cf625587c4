import { clothLengthText, MM_PER_YARD, type UnitChoice } from "../../units/index.ts";
import type { ClothCutting, LengthsCutting } from "./cutting-plan.ts";

/** The least length of cloth that is told as one. */
const LEAST_TOLD: Record<UnitChoice["system"], { mm: number; text: string }> = {
  imperial: { mm: MM_PER_YARD / 8, text: "1⁄8\u00a0yd" },
  metric: { mm: 10, text: "1\u00a0cm" },
};
const LEAST_TOLD_SHARE = 0.001;

/** How near a cloth's plan is to the least that it could take, in honest words. */
export function clothGapWords({ answer, problem }: ClothCutting, units: UnitChoice): string {
  if (problem.pieces.length === 0) return "All its pieces are cut.";
  if (answer.status === "withheld")
    return "The plan failed its check and is withheld. Cut by the sheets of the shades.";
  if (!("bolts" in answer)) return `No plan: ${answer.reason}.`;
  if (answer.status === "optimal") return "No plan takes less cloth: that is proved.";
  const savingMm = answer.cost - answer.bound.cost;
  const { mm, text } = LEAST_TOLD[units.system];
  if (savingMm < mm) return `Less than ${text} might still be saved.`;
  return `Up to ${clothLengthText(savingMm, units)} (${percentText(answer.cost, answer.bound.cost)}) might still be saved.`;
}

export function lengthsGapWords({ answer }: LengthsCutting): string {
  if (answer.kind === "infeasible") return "Longer than any that is sold.";
  if (answer.kind === "optimal") return "Proven least.";
  const { plan, bound } = answer;
  if (plan.cost - bound.cost < plan.cost * LEAST_TOLD_SHARE)
    return "Less than 0.1\u00a0% might still be saved.";
  return `Up to ${percentText(plan.cost, bound.cost)} might still be saved.`;
}

function percentText(cost: number, bound: number): string {
  return `${((100 * (cost - bound)) / cost).toFixed(1)}\u00a0%`;
}
