import { type Finding, WorkingBook } from "../figures/index.ts";
import type { ResolvedRates, Stock } from "../job/index.ts";
import type { Cost } from "../shade-plan/index.ts";
import type { UnitChoice } from "../units/index.ts";
import { judgePrices, judgeStock } from "./judge-cost.ts";
import { sumLabour } from "./labour.ts";
import { mergeNeeds } from "./need.ts";
import type { ShadeCost } from "./plan-cost.ts";
import { shop } from "./shop.ts";
import { StockAtHand } from "./stock-at-hand.ts";
import { totalCost } from "./total.ts";

export interface JobTerms {
  rates: ResolvedRates;
  units: UnitChoice;
  stock?: Stock;
}

/**
 * What the whole job takes: the needs of all shades together, less what is at hand,
 * rounded to what is sold once for the job.
 */
export function sumCosts(
  shades: Pick<ShadeCost, "cost" | "needs">[],
  { rates, units, stock }: JobTerms,
  book = new WorkingBook(),
): { cost: Cost; findings: Finding[] } {
  const needs = mergeNeeds(shades.flatMap((shade) => shade.needs));
  const atHand = new StockAtHand(stock);
  const findings: Finding[] = [];
  const terms = { units, wasteShare: rates.wasteShare };
  const alone = quantitiesAlone(shades);
  const shopping = needs.map((need) => {
    const before = need.sort === "running" ? atHand.holds(need.stockId) : { pieces: 0, lengthMm: 0 };
    const shopped = shop(need, atHand, terms, alone.get(need.id));
    findings.push(...judgeStock(need, shopped, before, units));
    return shopped.line;
  });
  const labour = sumLabour(
    shades.map((shade) => shade.cost.labour),
    rates,
  );
  const cost = totalCost(shopping, labour, rates, book);
  return { cost, findings: [...findings, ...judgePrices(cost, needs)] };
}

/** What the shades would take if each were bought for alone, by line. */
function quantitiesAlone(shades: Pick<ShadeCost, "cost">[]): Map<string, number> {
  const sums = new Map<string, number>();
  for (const { cost } of shades) {
    for (const { id, quantity } of cost.shopping) sums.set(id, (sums.get(id) ?? 0) + quantity);
  }
  return sums;
}
