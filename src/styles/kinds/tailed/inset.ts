import { type Figure, figureRule } from "../../../figures/index.ts";
import type { ResolvedMaking } from "../../../job/index.ts";
import { cite } from "../../../sources/index.ts";
import { FINISHED_WIDTH } from "../../base/size-inputs.ts";

/** Nearer to the edge, or nearer to the middle, no pleat can stand. */
const LEAST_SHARE = 0.05;
const MOST_SHARE = 0.45;

const INSET = figureRule({
  id: "shape.pleat-inset",
  label: "Pleat in from each edge",
  symbol: "e",
  unit: "mm",
  formula: "q·W",
  inputs: {
    q: ["ratio", "share of the width", "pleat/insetShare"],
    W: FINISHED_WIDTH,
  },
  restsOn: ["pleat/insetMm"],
  cite: cite("inset-pleats", "35 cm in from the edges of 150 cm"),
  compute: ({ q, W }) => q * W,
});

/** How far each pleat stands in from its edge, mm; the figure is there where the maker did not fix it. */
export function pleatInset(
  { insetMm, insetShare }: ResolvedMaking["pleat"],
  widthMm: number,
): { insetMm: number; workings: Figure[] } {
  if (insetMm !== undefined) return { insetMm: withinShade(insetMm, widthMm), workings: [] };
  const wanted = INSET.figure({ q: insetShare, W: widthMm });
  return { insetMm: withinShade(wanted.value, widthMm), workings: [wanted] };
}

/** The inset that leaves a centre and two tails, mm: between a twentieth and nine twentieths of the width (our choice). */
export function withinShade(insetMm: number, widthMm: number): number {
  return Math.min(Math.max(insetMm, LEAST_SHARE * widthMm), MOST_SHARE * widthMm);
}
