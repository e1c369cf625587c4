import type { Finding, StageResult } from "../figures/index.ts";
import type { ResolvedRates, Stock } from "../job/index.ts";
import type { Cost } from "../shade-plan/index.ts";
import type { UnitChoice } from "../units/index.ts";
import { judgePrices, judgeStock } from "./judge-cost.ts";
import { sumLabour } from "./labour.ts";
import { mergeNeeds } from "./need.ts";
import type { ShadeCost } from "./plan-cost.ts";
import { shop } from "./shop.ts";
import { shoppingLineOf } from "./shopping-line.ts";
import { StockAtHand } from "./stock-at-hand.ts";
import { totalCost } from "./total.ts";

/** What the cost of a whole job follows from. */
export interface JobCostInput {
  shades: readonly ShadeCost[];
  rates: ResolvedRates;
  units: UnitChoice;
  stock?: Stock | undefined;
}

/**
 * What the whole job takes: the needs of all shades together, less what is at hand, rounded to what is sold once for
 * the job. Money in `rates.currency`.
 */
export function sumCosts({ shades, rates, units, stock }: JobCostInput): StageResult<Cost> {
  const needs = mergeNeeds(shades.flatMap((shade) => shade.needs));
  const atHand = new StockAtHand(stock);
  const findings: Finding[] = [];
  const alone = quantitiesAlone(shades);
  const bought = needs.map((need) => {
    const before = need.sort === "running" ? atHand.holds(need.stockId) : undefined;
    const one = shop(need, atHand, rates.wasteShare, alone.get(need.id));
    if (before !== undefined) findings.push(...judgeStock(one, before, units));
    return one;
  });
  const labour = sumLabour(
    shades.map((shade) => shade.cost.labour),
    rates,
  );
  const { values, workings } = totalCost(
    bought,
    () => bought.map((one) => shoppingLineOf(one, units)),
    labour,
    rates,
  );
  return { values, findings: [...findings, ...judgePrices(bought)], workings };
}

/** What the shades would take if each were bought for alone, by line. */
function quantitiesAlone(shades: readonly ShadeCost[]): Map<string, number> {
  const sums = new Map<string, number>();
  for (const { quantities } of shades) {
    for (const [id, quantity] of quantities) sums.set(id, (sums.get(id) ?? 0) + quantity);
  }
  return sums;
}
