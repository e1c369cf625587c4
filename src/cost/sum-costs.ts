import { type Finding, type StageResult, sameItems } from "../figures/index.ts";
import type { ResolvedRates, Stock } from "../job/index.ts";
import type { Cost, LabourLine } from "../shade-plan/index.ts";
import type { UnitChoice } from "../units/index.ts";
import { judgePrices, judgeStock } from "./judge-cost.ts";
import { sumLabour } from "./labour.ts";
import { labelOf, mergeNeeds, type Need } from "./need.ts";
import type { ShadeCost } from "./plan-cost.ts";
import { type Bought, shop } from "./shop.ts";
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
export function sumCosts(input: JobCostInput): StageResult<Cost> {
  return new CostSum().of(input);
}

/** Shades that are added up at a time: one of them changed costs the others of its group and the groups. */
const GROUP = 64;

interface Group {
  shades: readonly ShadeCost[];
  rates: ResolvedRates;
  needs: Need[];
  /** What the shades would take if each were bought for alone, by line. */
  alone: ReadonlyMap<string, number>;
  labour: LabourLine[];
}

interface Shopped {
  need: Need;
  wasteShare: number;
  atMost: number | undefined;
  bought: Bought;
}

/**
 * The sum of a job's costs, again and again while it is edited: shades are added up in groups, and a line of the list is
 * shopped for anew only where what it takes has changed.
 */
export class CostSum {
  #groups: Group[] = [];
  #shopped = new Map<string, Shopped>();

  of({ shades, rates, units, stock }: JobCostInput): StageResult<Cost> {
    const groups = this.#grouped(shades, rates);
    const needs = mergeNeeds(groups.flatMap((group) => group.needs));
    const atHand = new StockAtHand(stock);
    const findings: Finding[] = [];
    const alone = summed(groups.map((group) => group.alone));
    const shopped = new Map<string, Shopped>();
    const bought = needs.map((need) => {
      const before = need.sort === "running" ? atHand.holds(need.stockId) : undefined;
      const one = this.#shop(need, atHand, rates.wasteShare, alone.get(need.id));
      shopped.set(need.id, one);
      if (before !== undefined) findings.push(...judgeStock(one.bought, before, units));
      return one.bought;
    });
    this.#shopped = shopped;
    const labour = sumLabour(
      groups.map((group) => group.labour),
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

  #grouped(shades: readonly ShadeCost[], rates: ResolvedRates): Group[] {
    const groups: Group[] = [];
    for (let from = 0; from < shades.length; from += GROUP) {
      const some = shades.slice(from, from + GROUP);
      const last = this.#groups[groups.length];
      groups.push(last?.rates === rates && sameItems(last.shades, some) ? last : groupOf(some, rates));
    }
    this.#groups = groups;
    return groups;
  }

  /** What was bought last time stands for the same need where nothing of it lies at hand, which others may have used. */
  #shop(need: Need, atHand: StockAtHand, wasteShare: number, atMost: number | undefined): Shopped {
    const last = this.#shopped.get(need.id);
    const fromShop = !("stockId" in need) || atHand.holds(need.stockId).pieces === 0;
    const stands = fromShop && last?.wasteShare === wasteShare && last.atMost === atMost;
    if (stands && sameNeed(last.need, need)) return last;
    return { need, wasteShare, atMost, bought: shop(need, atHand, wasteShare, atMost) };
  }
}

function groupOf(shades: readonly ShadeCost[], rates: ResolvedRates): Group {
  return {
    shades,
    rates,
    needs: mergeNeeds(shades.flatMap((shade) => shade.needs)),
    alone: summed(shades.map(({ quantities }) => quantities)),
    labour: sumLabour(
      shades.map(({ cost }) => cost.labour),
      rates,
    ),
  };
}

function summed(all: readonly ReadonlyMap<string, number>[]): Map<string, number> {
  const sums = new Map<string, number>();
  for (const quantities of all) {
    for (const [id, quantity] of quantities) sums.set(id, (sums.get(id) ?? 0) + quantity);
  }
  return sums;
}

/** Whether two needs ask for the same under the same name. */
function sameNeed(a: Need, b: Need): boolean {
  const keys = Object.keys(a) as (keyof Need)[];
  return (
    keys.length === Object.keys(b).length &&
    keys.every((key) => key === "label" || sameValue(a[key], b[key])) &&
    labelOf(a) === labelOf(b)
  );
}

function sameValue(a: unknown, b: unknown): boolean {
  return Array.isArray(a) && Array.isArray(b) ? sameItems(a, b) : Object.is(a, b);
}
