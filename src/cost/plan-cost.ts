import type { StageResult } from "../figures/index.ts";
import type { Cost } from "../shade-plan/index.ts";
import { clothNeeds } from "./cloth-needs.ts";
import type { CostInput } from "./cost-input.ts";
import { withClothTaken } from "./existing-needs.ts";
import { hardwareNeeds } from "./hardware-needs.ts";
import { judgeLengths } from "./judge-cost.ts";
import { labourOf, sewnLength } from "./labour.ts";
import { mergeNeeds, type Need, withTypedPrice } from "./need.ts";
import { shop } from "./shop.ts";
import { shoppingLineOf } from "./shopping-line.ts";
import { StockAtHand } from "./stock-at-hand.ts";
import { threadLength, threadNeed } from "./thread-need.ts";
import { totalCost } from "./total.ts";

/** The cost of one shade, and what it takes before rounding: the job adds that up. */
export interface ShadeCost {
  cost: Cost;
  needs: Need[];
  /** What is bought for the shade alone, by the need's id, in the unit of its line. */
  quantities: ReadonlyMap<string, number>;
}

/**
 * What one shade costs if it were bought for alone: nothing at hand, every line rounded to what is sold. Money in
 * `rates.currency`; the words of its shopping list are made when they are read.
 */
export function planCost(whole: CostInput): StageResult<ShadeCost> {
  const input = withClothTaken(whole);
  const { shade, rates } = input;
  const { units } = shade;
  const sewn = sewnLength(input);
  const thread = threadLength(input, sewn.value);
  const sews = thread.value > 0 ? [threadNeed(thread.value)] : [];
  const needs = mergeNeeds([...clothNeeds(input), ...hardwareNeeds(input), ...sews]).map((need) =>
    withTypedPrice(need, rates.prices),
  );
  const stock = new StockAtHand();
  const bought = needs.map((need) => shop(need, stock, rates.wasteShare));
  const { values: cost, workings } = totalCost(
    bought,
    () => bought.map((one) => shoppingLineOf(one, units)),
    labourOf(input, rates, sewn.value),
    rates,
    { alone: true },
  );
  const quantities = new Map(bought.map(({ need, quantity }) => [need.id, quantity]));
  return {
    values: { cost, needs, quantities },
    findings: judgeLengths(needs, shade),
    workings: [sewn, thread, ...workings],
  };
}
