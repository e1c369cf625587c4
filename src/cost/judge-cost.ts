import type { Finding } from "../figures/index.ts";
import type { ShoppingLine } from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";
import { clothLengthText, lengthText, SAME_LENGTH_MM, type UnitChoice } from "../units/index.ts";
import { counted } from "../words/index.ts";
import type { CostShade } from "./cost-input.ts";
import { soldLengths } from "./length-for.ts";
import { longestMm } from "./longest.ts";
import { labelOf, type Need } from "./need.ts";
import type { Bought } from "./shop.ts";
import { runningBuyText } from "./shopping-line.ts";
import type { StockAtHand } from "./stock-at-hand.ts";
import { isUnpriced } from "./total.ts";

/** Pieces longer than the lengths in which the part is sold. */
export function judgeLengths(needs: Need[], shade: CostShade): Finding[] {
  const findings: Finding[] = [];
  for (const need of needs) {
    if (need.sort !== "lengths" || need.stockMm === undefined) continue;
    const longest = longestMm(need.cutsMm);
    const soldMm = longestMm(soldLengths(need).map(({ lengthMm }) => lengthMm));
    if (longest <= soldMm + SAME_LENGTH_MM) continue;
    findings.push({
      id: "cost.longer-than-sold",
      severity: "fix",
      stage: "cost",
      shadeId: shade.shadeId,
      path: `${shade.path}/shade`,
      text: `${labelOf(need)}: a piece of ${lengthText(longest, shade.units)} is needed, but it is sold in lengths of ${lengthText(soldMm, shade.units)}${need.alsoSold ? " at the most" : ""}. Ask for a longer length, or choose another part. It is left out of the price.`,
      cite: cite("arithmetic"),
      remedies: [],
    });
  }
  return findings;
}

export const CLOTH_SHORT = "cost.cloth-short";

/** Stock that holds some of a cloth but not enough. */
export function judgeStock(
  bought: Bought,
  before: ReturnType<StockAtHand["holds"]>,
  units: UnitChoice,
): Finding[] {
  if (!("boughtMm" in bought) || bought.need.group !== "cloth") return [];
  const { need, neededMm, fromStockMm, boughtMm } = bought;
  if (before.pieces === 0 || boughtMm === 0) return [];
  const line = { label: labelOf(need), buyText: runningBuyText(boughtMm, need.unit, units) };
  return [clothShort(line, { ...before, usedMm: fromStockMm, neededMm }, units)];
}

/** A cloth of which some lies at hand, and what its cutting plan takes of that and of new cloth. */
export interface StockAsCut {
  line: Pick<ShoppingLine, "label" | "buyText">;
  pieces: number;
  lengthMm: number;
  usedMm: number;
  newMm: number;
}

/** The same as a cutting plan takes it. */
export function judgeStockAsCut({ line, newMm, ...held }: StockAsCut, units: UnitChoice): Finding[] {
  if (held.pieces === 0 || newMm === 0) return [];
  return [clothShort(line, { ...held, neededMm: held.usedMm + newMm }, units)];
}

function clothShort(
  { label, buyText }: Pick<ShoppingLine, "label" | "buyText">,
  held: { pieces: number; lengthMm: number; usedMm: number; neededMm: number },
  units: UnitChoice,
): Finding {
  const all = `${counted(held.pieces, "piece")} at hand, ${clothLengthText(held.lengthMm, units, "down")} in all`;
  const serves =
    held.usedMm > 0
      ? `${clothLengthText(held.usedMm, units)} of it serves`
      : "none is long and wide enough for a cut";
  return {
    id: CLOTH_SHORT,
    severity: "fix",
    stage: "cost",
    path: "/stock/cloth",
    text: `${label}: ${all}; ${serves}. The cuts take ${clothLengthText(held.neededMm, units)}, so ${buyText} must be bought. Ask for the same dye lot, or cut every piece from the new length.`,
    cite: cite("arithmetic", "cuts placed longest first; each comes off in one piece"),
    remedies: [],
  };
}

/** Prices that nobody entered. Nearly every job has some: their words are made when they are read. */
export function judgePrices(bought: readonly Bought[]): Finding[] {
  const findings: Finding[] = [];
  const invented = bought.filter(({ need }) => need.demo === true && need.price !== undefined);
  if (invented.length > 0) {
    findings.push({
      id: "cost.demo-prices",
      severity: "note",
      stage: "cost",
      path: "/rates",
      get text() {
        return `${counted(invented.length, "price")} of this job ${invented.length === 1 ? "is" : "are"} invented for demonstration (${listed(invented)}). Enter your own before you quote.`;
      },
      cite: cite("demo"),
      remedies: [],
    });
  }
  const unpriced = bought.filter(isUnpriced);
  if (unpriced.length > 0) {
    findings.push({
      id: "cost.unpriced",
      severity: "note",
      stage: "cost",
      path: "/hardware",
      get text() {
        return `The total leaves out what has no price: ${listed(unpriced)}.`;
      },
      cite: cite("arithmetic"),
      remedies: [],
    });
  }
  return findings;
}

const MOST_NAMED = 8;

function listed(bought: readonly Bought[]): string {
  const shown = bought.slice(0, MOST_NAMED).map(({ need }) => labelOf(need));
  const more = bought.length - MOST_NAMED;
  return more > 0 ? `${shown.join("; ")}; and ${more} more` : shown.join("; ");
}
