import { type ClothTaken, type LengthsTaken, priceAsCut } from "../../cost/index.ts";
import { WorkingBook } from "../../figures/index.ts";
import { type Job, partsOf, resolveRates } from "../../job/index.ts";
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
    resolveRates(job.rates),
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
  // Without a plan the layers are bought one by one, as they were computed.
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
  newStockIds,
  stockPrices,
  answer,
  tooLong,
  problem,
}: LengthsCutting): LengthsTaken | undefined {
  if (newStockIds.length === 0 || answer.kind === "infeasible") return undefined;
  // What is bought to its own length has no price that we know: the line stays as it was.
  if (tooLong.length > 0 || answer.plan.toMeasure.length > 0) return undefined;
  const counts = newStockIds.flatMap((stockId) => {
    const count = answer.plan.bars.filter((bar) => bar.stockId === stockId).length;
    const lengthMm = problem.stock.find((one) => one.id === stockId)?.lengthMm ?? 0;
    return count === 0 ? [] : [{ lengthMm, count, price: stockPrices[stockId] }];
  });
  const bought = counts.reduce((sum, { count }) => sum + count, 0);
  return { lineId: id, noun, counts, fromStock: answer.plan.bars.length - bought };
}
