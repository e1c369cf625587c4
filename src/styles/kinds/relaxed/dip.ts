import { type Figure, figureRule } from "../../../figures/index.ts";
import type { ResolvedMaking } from "../../../job/index.ts";
import { cite, sourced } from "../../../sources/index.ts";
import { type Scallop, scallopOfArc, scallopOfSag } from "../../base/scallop.ts";

/** Dip where neither dip nor width was given: 4 in on a shade 36 in wide. */
export const USUAL_DIP_SHARE = sourced(1 / 9, "ratio", cite("our-choice", "4 in on a shade 36 in wide"));
/** A deeper dip than this share of the length is not made. */
const DEEPEST_SHARE = sourced(1 / 3, "ratio", cite("our-choice"));

/** A shallower dip than this is none. */
const LEAST_MM = 1;

/** How the lower edge of a relaxed shade hangs between its two columns, and the width that this takes. */
export interface Dip {
  spanMm: number;
  dipMm: number;
  /** Panel wider at the hem than the finished shade, mm. */
  extraMm: number;
  /** What was asked for is more than the length allows. */
  tooDeep: boolean;
  /** Extra width that the maker asked for beside a dip, and what the dip takes. */
  disagrees: boolean;
}

const SAME_MM = 1;

/** Dip and extra width, whichever was given: the other follows by the catenary. */
export function dipOf(relax: ResolvedMaking["relax"], spanMm: number, lengthMm: number): Dip {
  const deepestMm = lengthMm * DEEPEST_SHARE.value;
  const asked = askedDip(relax.dipMm, relax.extraWidthMm, spanMm);
  const wantedMm = Math.min(asked.sagMm, deepestMm);
  const hangs = scallopOfSag(spanMm, wantedMm < LEAST_MM ? 0 : wantedMm);
  return {
    spanMm,
    dipMm: hangs.sagMm,
    extraMm: Math.max(0, hangs.arcMm - spanMm),
    tooDeep: asked.sagMm > deepestMm + SAME_MM,
    disagrees:
      relax.dipMm !== undefined &&
      relax.extraWidthMm !== undefined &&
      Math.abs(relax.extraWidthMm - (asked.arcMm - spanMm)) > SAME_MM,
  };
}

function askedDip(dipMm: number | undefined, extraMm: number | undefined, spanMm: number): Scallop {
  if (dipMm !== undefined) return scallopOfSag(spanMm, dipMm);
  if (extraMm !== undefined) return scallopOfArc(spanMm, spanMm + extraMm);
  return scallopOfSag(spanMm, spanMm * USUAL_DIP_SHARE.value);
}

/** What dip and extra width follow from. */
export const DIP_BY = [
  "relax/dipMm",
  "relax/extraWidthMm",
  "figure:shape.column-spacing",
  "figure:measure.finished-length",
] as const;

const SPAN = ["mm", "between the two columns", "figure:shape.column-spacing"] as const;
const PARAMETER = ["mm", "parameter of the catenary that hangs so", ...DIP_BY] as const;

const DIP = figureRule({
  id: "shape.dip",
  label: "Dip that the extra width holds",
  symbol: "D",
  unit: "mm",
  formula: "2·k·sinh(w / (4·k))^2",
  inputs: { k: PARAMETER, w: SPAN },
  cite: cite("catenary"),
  compute: ({ k, w }) => 2 * k * Math.sinh(w / (4 * k)) ** 2,
});

const EXTRA_WIDTH = figureRule({
  id: "shape.extra-width",
  label: "Wider at the hem, for the dip",
  symbol: "E",
  unit: "mm",
  formula: "max(0, 2·sqrt(D^2 + 2·k·D) − w)",
  inputs: { D: ["mm", "dip in the middle", ...DIP_BY], k: PARAMETER, w: SPAN },
  cite: cite("catenary"),
  note: "about 8·D² / (3·w) for a shallow dip",
  compute: ({ D, k, w }) => Math.max(0, 2 * Math.sqrt(D ** 2 + 2 * k * D) - w),
});

/** Dip or width, whichever was found from the other, mm; none where the edge lies straight. */
export function dipFigures(relax: ResolvedMaking["relax"], { spanMm, dipMm }: Dip): Figure[] {
  const { parameterMm: k } = scallopOfSag(spanMm, dipMm);
  if (k === undefined) return [];
  const byWidth = relax.dipMm === undefined && relax.extraWidthMm !== undefined;
  return [byWidth ? DIP.figure({ k, w: spanMm }) : EXTRA_WIDTH.figure({ D: dipMm, k, w: spanMm })];
}
