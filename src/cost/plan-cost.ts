import { type Finding, WorkingBook } from "../figures/index.ts";
import type { ResolvedRates } from "../job/index.ts";
import type { Cost } from "../shade-plan/index.ts";
import { clothNeeds } from "./cloth-needs.ts";
import type { CostInput } from "./cost-input.ts";
import { hardwareNeeds } from "./hardware-needs.ts";
import { judgeLengths } from "./judge-cost.ts";
import { labourOf, sewnMm } from "./labour.ts";
import { mergeNeeds, type Need } from "./need.ts";
import { shop } from "./shop.ts";
import { StockAtHand } from "./stock-at-hand.ts";
import { threadNeed } from "./thread-need.ts";
import { totalCost } from "./total.ts";

/** The cost of one shade, and what it takes before rounding: the job adds that up. */
export interface ShadeCost {
  cost: Cost;
  needs: Need[];
  findings: Finding[];
}

/**
 * What one shade costs if it were bought for alone: nothing at hand, every line rounded to what is sold.
 * Money in `rates.currency`; workings go into `book`.
 */
export function planCost(input: CostInput, rates: ResolvedRates, book = new WorkingBook()): ShadeCost {
  const { units } = input.resolved;
  const sewMm = sewnMm(input, book);
  const needs = mergeNeeds([...clothNeeds(input), ...hardwareNeeds(input), threadNeed(input, sewMm, book)]);
  const stock = new StockAtHand();
  const shopping = needs.map((need) => shop(need, stock, { units, wasteShare: rates.wasteShare }).line);
  const cost = totalCost(shopping, labourOf(input, rates, sewMm), rates, book);
  return { cost, needs, findings: judgeLengths(needs, input.resolved) };
}
