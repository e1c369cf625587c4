import { clothLengthText, type UnitChoice } from "../../units/index.ts";
import type { ClothCutting, LengthsCutting } from "./cutting-plan.ts";

/** How near a cloth's plan is to the least that it could take, in honest words. */
export function clothGapWords({ answer, problem }: ClothCutting, units: UnitChoice): string {
  if (problem.pieces.length === 0) return "All its pieces are cut.";
  if (answer.status === "withheld")
    return "The plan failed its check and is withheld. Cut by the sheets of the shades.";
  if (!("bolts" in answer)) return `No plan: ${answer.reason}.`;
  if (answer.status === "optimal") return "No plan takes less cloth: that is proved.";
  const saving = clothLengthText(answer.cost - answer.bound.cost, units);
  return `Up to ${saving} (${percentText(answer.cost, answer.bound.cost)}) might still be saved.`;
}

export function lengthsGapWords({ answer }: LengthsCutting): string {
  if (answer.kind === "infeasible") return "Longer than any that is sold.";
  if (answer.kind === "optimal") return "No plan takes less: that is proved.";
  return `Up to ${percentText(answer.plan.cost, answer.bound.cost)} might still be saved.`;
}

function percentText(cost: number, bound: number): string {
  return `${((100 * (cost - bound)) / cost).toFixed(1)}\u00a0%`;
}
