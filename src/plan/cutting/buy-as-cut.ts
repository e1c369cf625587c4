import {
  CLOTH_SHORT,
  type ClothTaken,
  judgeStockAsCut,
  type LengthsTaken,
  priceAsCut,
} from "../../cost/index.ts";
import { bySeverity, type Finding, type Working, workingOf } from "../../figures/index.ts";
import { type Job, partsOf, resolveRates } from "../../job/index.ts";
import type { Plan, ShadePlan } from "../plan-types.ts";
import { withOwn } from "../shade-planner.ts";
import type { ClothCutting, CuttingPlan, LengthsCutting } from "./cutting-plan.ts";
import { judgeCutWork } from "./judge-cut-work.ts";

/**
 * The plan with the job's shopping, cost and findings on stock as the cutting plan takes cloth and lengths. A job of one
 * shade costs what its shade costs: there is one sum.
 */
export function buyAsCut(job: Job, plan: Plan, cutting: CuttingPlan): Plan {
  const parts = partsOf(job).cloths;
  const cloths = cutting.cloths.flatMap((one) => clothTaken(one, parts, job.cutCloth) ?? []);
  const { values: cost, workings } = priceAsCut(
    plan.cost,
    {
      cloths,
      lengths: cutting.lengths.flatMap((one) => lengthsTaken(one) ?? []),
    },
    resolveRates(job.rates),
    plan.units,
  );
  const sums = workings.map(workingOf);
  const [shade] = plan.shades;
  const shades = shade && plan.shades.length === 1 ? [withSums(shade, cost, sums)] : plan.shades;
  const taken = { ...plan, shades, cost, workings: sums };
  const findings = [...findingsAsCut(job, taken, cloths), ...judgeCutWork(job, plan, cutting)];
  return { ...taken, findings: findings.toSorted(bySeverity) };
}

function withSums(shade: ShadePlan, cost: ShadePlan["cost"], sums: readonly Working[]): ShadePlan {
  const asCut = new Map(sums.map((sum) => [sum.id, sum]));
  return withOwn(shade, {
    cost,
    get workings() {
      return shade.workings.map((own) => asCut.get(own.id) ?? own);
    },
  });
}

/** What is at hand is told as it is cut, so that findings and shopping list name the same amounts. */
function findingsAsCut(job: Job, { cost, findings, units }: Plan, cloths: readonly ClothTaken[]): Finding[] {
  const short = cloths.flatMap(({ cloth, newMm, atHandMm }) => {
    const line = cost.shopping.find(({ id }) => id === `cloth-${cloth.id}`);
    if (line === undefined) return [];
    const held = (job.stock.cloth ?? []).filter((one) => one.cloth === cloth.id);
    const lengthMm = held.reduce((sum, one) => sum + one.lengthMm, 0);
    const asCut = { line, pieces: held.length, lengthMm, usedMm: atHandMm, newMm };
    return [{ label: line.label, findings: judgeStockAsCut(asCut, units) }];
  });
  const isStale = ({ id, text }: Finding) =>
    id === CLOTH_SHORT && short.some(({ label }) => text.startsWith(`${label}: `));
  return [...findings.filter((finding) => !isStale(finding)), ...short.flatMap((one) => one.findings)];
}

function clothTaken(
  { clothId, newBoltId, answer }: ClothCutting,
  cloths: readonly ClothTaken["cloth"][],
  cutCloth: Job["cutCloth"] = [],
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
  const boughtMm = cutCloth.find((one) => one.cloth === clothId)?.boughtMm ?? 0;
  return { cloth, newMm, atHandMm, boughtMm };
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
