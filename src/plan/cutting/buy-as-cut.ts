import { WorkingBook } from "../../account/index.ts";
import { type ClothTaken, type LengthsTaken, priceAsCut } from "../../cost/index.ts";
import { type Job, partsOf, settleRates } from "../../job/index.ts";
import type { Plan } from "../plan-types.ts";
import type { ClothCutting, CuttingPlan, LengthsCutting } from "./cutting-plan.ts";

/** The plan with the job's shopping and cost as the cutting plan takes cloth and lengths. */
export function buyAsCut(job: Job, plan: Plan, cutting: CuttingPlan): Plan {
  const { cloths } = partsOf(job);
  const book = new WorkingBook();
  const cost = priceAsCut(
    plan.cost,
    {
      cloths: cutting.cloths.flatMap((one) => clothTaken(one, cloths) ?? []),
      lengths: cutting.lengths.flatMap((one) => lengthsTaken(one) ?? []),
    },
    settleRates(job.rates),
    plan.units,
    book,
  );
  return { ...plan, cost, workings: book.workings };
}

function clothTaken(
  { clothId, newBoltId, answer }: ClothCutting,
  cloths: readonly ClothTaken["cloth"][],
): ClothTaken | undefined {
  const cloth = cloths.find(({ id }) => id === clothId);
  // Without a plan the layers are bought one by one, as they were reckoned.
  if (cloth === undefined || !("bolts" in answer)) return undefined;
  let newMm = 0;
  let atHandMm = 0;
  for (const { boltId, usedMm } of answer.bolts) {
    if (boltId === newBoltId) newMm += usedMm;
    else atHandMm += usedMm;
  }
  return { cloth, newMm, atHandMm };
}

function lengthsTaken({
  id,
  noun,
  newStockId,
  answer,
  tooLong,
  problem,
}: LengthsCutting): LengthsTaken | undefined {
  const sold = problem.stock.find((one) => one.id === newStockId);
  if (sold === undefined || answer.kind === "infeasible") return undefined;
  // What is bought to its own length has no price that we know: the line stays as it was.
  if (tooLong.length > 0 || answer.plan.toMeasure.length > 0) return undefined;
  const bought = answer.plan.bars.filter(({ stockId }) => stockId === newStockId).length;
  const fromRack = answer.plan.bars.length - bought;
  return { lineId: id, noun, stockMm: sold.lengthMm, bought, fromRack };
}
