import type { Finding } from "../figures/index.ts";
import type { ResolvedShade } from "../job/index.ts";
import type { Cost } from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";
import { clothLengthText, lengthText, SAME_LENGTH_MM, type UnitChoice } from "../units/index.ts";
import { soldLengths } from "./length-for.ts";
import { longestMm } from "./longest.ts";
import type { Need } from "./need.ts";
import type { Shopped } from "./shop.ts";
import { countText } from "./sold.ts";
import type { StockAtHand } from "./stock-at-hand.ts";

/** Pieces longer than the lengths in which the part is sold. */
export function judgeLengths(needs: Need[], resolved: ResolvedShade): Finding[] {
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
      shadeId: resolved.shadeId,
      path: `${resolved.path}/shade`,
      text: `${need.label}: a piece of ${lengthText(longest, resolved.units)} is needed, but it is sold in lengths of ${lengthText(soldMm, resolved.units)}${need.alsoSold ? " at the most" : ""}. Ask for a longer length, or choose another part. It is left out of the price.`,
      cite: cite("arithmetic"),
      remedies: [],
    });
  }
  return findings;
}

/** Stock that holds some of a cloth but not enough. */
export function judgeStock(
  need: Need,
  shopped: Shopped,
  before: ReturnType<StockAtHand["holds"]>,
  units: UnitChoice,
): Finding[] {
  if (need.sort !== "running" || need.group !== "cloth" || shopped.lengths === undefined) return [];
  const { neededMm, fromStockMm, boughtMm } = shopped.lengths;
  if (before.pieces === 0 || boughtMm === 0) return [];
  const held = `${countText(before.pieces, "piece")} at hand, ${clothLengthText(before.lengthMm, units)} in all`;
  const serves =
    fromStockMm > 0
      ? `${clothLengthText(fromStockMm, units)} of it serves`
      : "none is long and wide enough for a cut";
  return [
    {
      id: "cost.cloth-short",
      severity: "fix",
      stage: "cost",
      path: "/stock/cloth",
      text: `${need.label}: ${held}; ${serves}. The cuts take ${clothLengthText(neededMm, units)}, so ${shopped.line.buyText} must be bought. Ask for the same dye lot, or cut every piece from the new length.`,
      cite: cite("arithmetic", "cuts placed longest first; each comes off in one piece"),
      remedies: [],
    },
  ];
}

/** Prices that nobody entered. */
export function judgePrices(cost: Cost, needs: Need[]): Finding[] {
  const findings: Finding[] = [];
  const invented = needs.filter((need) => need.demo === true && need.price !== undefined);
  if (invented.length > 0) {
    findings.push({
      id: "cost.demo-prices",
      severity: "note",
      stage: "cost",
      path: "/rates",
      text: `${countText(invented.length, "price")} of this job ${invented.length === 1 ? "is" : "are"} invented for demonstration (${listed(invented.map((need) => need.label))}). Enter your own before you quote.`,
      cite: cite("demo"),
      remedies: [],
    });
  }
  if (cost.unpriced.length > 0) {
    findings.push({
      id: "cost.unpriced",
      severity: "note",
      stage: "cost",
      path: "/hardware",
      text: `The total leaves out what has no price: ${listed(cost.unpriced)}.`,
      cite: cite("arithmetic"),
      remedies: [],
    });
  }
  return findings;
}

const MOST_NAMED = 8;

function listed(names: string[]): string {
  const shown = names.slice(0, MOST_NAMED).join("; ");
  return names.length > MOST_NAMED ? `${shown}; and ${names.length - MOST_NAMED} more` : shown;
}
