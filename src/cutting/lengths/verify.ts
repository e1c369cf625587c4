import { SAME_LENGTH_MM } from "../../units/index.ts";
import type { CutBar, LengthsAnswer, LengthsProblem } from "./problem.ts";

const SAME_COST_SHARE = 1e-6;

/** What is wrong with an answer, one sentence each; none where the plan can be cut as it says. */
export function verifyLengths(problem: LengthsProblem, answer: LengthsAnswer): string[] {
  if (answer.kind === "infeasible") return verifyRefusal(problem, answer.reason.cutIds);
  const { plan, bound } = answer;
  const faults = [
    ...cutsThatDiffer(problem, answer),
    ...plan.bars.flatMap((bar) => faultsOfBar(problem, bar)),
  ];
  for (const { id, available } of problem.stock) {
    const used = plan.bars.filter(({ stockId }) => stockId === id).length;
    if (available !== undefined && used > available)
      faults.push(`${used} of ${id} are cut, ${available} are there`);
  }
  if (plan.toMeasure.length > 0 && problem.toMeasureCostPerMm === undefined) {
    faults.push("a cut is bought to measure that cannot be");
  }
  const cost = costAgain(problem, answer);
  const sliver = SAME_COST_SHARE * Math.max(1, cost);
  if (Math.abs(cost - plan.cost) > sliver) faults.push(`the cost is ${cost}, not ${plan.cost}`);
  if (bound.cost > plan.cost + sliver)
    faults.push(`the bound ${bound.cost} lies above the cost ${plan.cost}`);
  if (answer.kind === "optimal" && bound.cost < plan.cost - sliver)
    faults.push("called optimal above its bound");
  if (answer.kind !== "optimal" && Math.abs(answer.gap * plan.cost - (plan.cost - bound.cost)) > sliver) {
    faults.push(`the gap is not ${answer.gap}`);
  }
  return faults;
}

type Planned = Exclude<LengthsAnswer, { kind: "infeasible" }>;

/** Every cut asked for is there once and as long as asked, and nothing else is. */
function cutsThatDiffer(problem: LengthsProblem, { plan }: Planned): string[] {
  const wanted = new Map(problem.cuts.map(({ id, lengthMm }) => [id, lengthMm]));
  const faults: string[] = [];
  for (const { id, lengthMm } of [...plan.bars.flatMap(({ cuts }) => cuts), ...plan.toMeasure]) {
    const asked = wanted.get(id);
    if (asked === undefined) faults.push(`${id} is cut twice or was not asked for`);
    else if (asked !== lengthMm) faults.push(`${id} is ${lengthMm} mm, not ${asked}`);
    wanted.delete(id);
  }
  for (const id of wanted.keys()) faults.push(`${id} is not cut`);
  return faults;
}

function faultsOfBar({ stock, kerfMm, keepMm }: LengthsProblem, bar: CutBar): string[] {
  const of = stock.find(({ id }) => id === bar.stockId);
  if (of === undefined) return [`there is no ${bar.stockId}`];
  const faults: string[] = [];
  if (of.lengthMm !== bar.stockMm) faults.push(`${of.id} is ${of.lengthMm} mm long, not ${bar.stockMm}`);
  // Walks along the bar as the saw does.
  let sawnMm = 0;
  for (const { id, fromMm, lengthMm } of bar.cuts) {
    if (Math.abs(fromMm - sawnMm) > SAME_LENGTH_MM)
      faults.push(`${id} begins at ${fromMm} mm, not at ${sawnMm}`);
    const endMm = sawnMm + lengthMm;
    if (endMm > of.lengthMm + SAME_LENGTH_MM * bar.cuts.length)
      faults.push(`${id} runs over the end of ${of.id}`);
    sawnMm = endMm + kerfMm;
  }
  const leftMm = Math.max(0, of.lengthMm - sawnMm);
  if (Math.abs(leftMm - bar.offcutMm) > SAME_LENGTH_MM * (1 + bar.cuts.length)) {
    faults.push(`the offcut of ${of.id} is ${leftMm} mm, not ${bar.offcutMm}`);
  }
  if (bar.kept !== (bar.offcutMm > 0 && bar.offcutMm >= keepMm))
    faults.push(`an offcut of ${of.id} is misjudged`);
  if (bar.cuts.length === 0) faults.push(`${of.id} is taken for nothing`);
  return faults;
}

function costAgain({ stock, toMeasureCostPerMm = 0 }: LengthsProblem, { plan }: Planned): number {
  const costs = new Map(stock.map(({ id, cost }) => [id, cost]));
  const bars = plan.bars.reduce((sum, { stockId }) => sum + (costs.get(stockId) ?? 0), 0);
  return plan.toMeasure.reduce((sum, { lengthMm }) => sum + lengthMm * toMeasureCostPerMm, bars);
}

/** A refusal must name cuts, each longer than what is sold. */
function verifyRefusal({ cuts, stock }: LengthsProblem, cutIds: readonly string[]): string[] {
  const faults = cutIds.length === 0 ? ["refused without a reason"] : [];
  for (const id of cutIds) {
    const cut = cuts.find((one) => one.id === id);
    const fits = stock.some(
      ({ lengthMm, available }) => available === undefined && lengthMm >= (cut?.lengthMm ?? 0),
    );
    if (cut === undefined || fits) faults.push(`${id} is refused, though it fits a length that is sold`);
  }
  return faults;
}
