import type { WorkingBook } from "../../figures/index.ts";
import type { ResolvedShade } from "../../job/index.ts";
import { cite } from "../../sources/index.ts";

/** Nearer to the edge, or nearer to the middle, no pleat can stand. */
const LEAST_SHARE = 0.05;
const MOST_SHARE = 0.45;

/** How far each pleat stands in from its edge, mm. */
export function pleatInset({ making: { pleat } }: ResolvedShade, widthMm: number, book: WorkingBook): number {
  if (pleat.insetMm !== undefined) return withinShade(pleat.insetMm, widthMm);
  const wanted = book.figure("shape.pleat-inset", {
    label: "Pleat in from each edge",
    symbol: "e",
    unit: "mm",
    formula: "q·W",
    given: { q: [pleat.insetShare, "ratio", "share of the width"], W: [widthMm, "mm", "finished width"] },
    cite: cite("inset-pleats", "35 cm in from the edges of 150 cm"),
    compute: ({ q, W }) => q * W,
  });
  return withinShade(wanted, widthMm);
}

export function withinShade(insetMm: number, widthMm: number): number {
  return Math.min(Math.max(insetMm, LEAST_SHARE * widthMm), MOST_SHARE * widthMm);
}
