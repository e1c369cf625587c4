import { figureRuleOf, type Worked } from "../figures/index.ts";
import type { ResolvedRates } from "../job/index.ts";
import type { Cost, LabourLine, ShoppingLine } from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";
import { sumCents } from "./money.ts";

/** Everything that a shade takes and its work follow from. */
const MATERIALS_BEHIND = [
  "figure:cloth.*",
  "figure:cost.thread",
  "figure:board.*",
  "figure:rig.*",
  "figure:lift.*",
  "figure:shape.*",
  "shade/face",
  "shade/interlining",
  "shade/blackout",
  "shade/lining",
  "shade/banding",
  "shade/bottomBand",
  "shade/mount",
  "lift/kind",
  "lift/lock",
  "lift/cord",
  "lift/eye",
  "lift/ring",
  "lift/tube",
  "lift/drive",
  "lift/rearCords",
  "fold/topDropMm",
  "gather/weight",
  "gather/frillMm",
  "board/section",
  "board/bar",
  "board/attachment",
  "ribs/kind",
  "ribs/rib",
];
const LABOUR_BEHIND = ["figure:cost.sewn", "figure:shape.*", "figure:cloth.*-length", "lift/kind"];

/** What is added up: all that is bought together, or what one shade takes by itself. */
interface Sum {
  alone: boolean;
}

const ALONE_NOTE = "everything bought for this shade alone, with nothing at hand";

const TAX = figureRuleOf<Sum>()({
  id: "cost.tax",
  label: ({ alone }) => (alone ? "Tax, this shade alone" : "Tax"),
  note: ({ alone }) => (alone ? ALONE_NOTE : undefined),
  symbol: "X",
  unit: "money",
  formula: "round((M + A)·t·100) / 100",
  inputs: {
    M: ["money", "materials", ...MATERIALS_BEHIND],
    A: ["money", "labour", ...LABOUR_BEHIND],
    t: ["ratio", "tax, share of one"],
  },
  cite: cite("arithmetic", "rounded to the cent once"),
  compute: ({ M, A, t }) => Math.round((M + A) * t * 100) / 100,
});

const TOTAL = figureRuleOf<Sum>()({
  id: "cost.total",
  label: ({ alone }) => (alone ? "Total, this shade alone" : "Total"),
  note: ({ alone }) => (alone ? ALONE_NOTE : undefined),
  symbol: "C",
  unit: "money",
  formula: "round((M + A + X)·100) / 100",
  inputs: {
    M: ["money", "materials", ...MATERIALS_BEHIND],
    A: ["money", "labour", ...LABOUR_BEHIND],
    X: ["money", "tax", "figure:cost.tax"],
  },
  cite: cite("arithmetic"),
  compute: ({ M, A, X }) => Math.round((M + A + X) * 100) / 100,
});

/**
 * Adds the lines up, with tax, and names the lines that have no price; money in `rates.currency`. `lines` puts the
 * shopping list into words: it is asked only once somebody reads the list.
 */
export function totalCost(
  bought: readonly Pick<ShoppingLine, "cost">[],
  lines: () => ShoppingLine[],
  labour: LabourLine[],
  rates: Pick<ResolvedRates, "currency" | "taxShare">,
  sum: Sum = { alone: false },
): Worked<Cost> {
  const materials = sumCents(bought);
  const labourCost = sumCents(labour);
  const tax = TAX.figure({ M: materials, A: labourCost, t: rates.taxShare }, sum);
  const total = TOTAL.figure({ M: materials, A: labourCost, X: tax.value }, sum);
  let shopping: ShoppingLine[] | undefined;
  const values: Cost = {
    currency: rates.currency,
    get shopping() {
      shopping ??= lines();
      return shopping;
    },
    labour,
    materials,
    labourCost,
    taxShare: rates.taxShare,
    tax: tax.value,
    total: total.value,
    get unpriced() {
      return this.shopping.filter(isUnpriced).map(({ label }) => label);
    },
  };
  return { values, workings: [tax, total] };
}

/** A line that takes something and has no price: the total leaves it out and says so. */
export function isUnpriced({ quantity, cost }: Pick<ShoppingLine, "quantity" | "cost">): boolean {
  return quantity > 0 && cost === undefined;
}
