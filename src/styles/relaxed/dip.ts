import type { WorkingBook } from "../../figures/index.ts";
import type { ResolvedShade } from "../../job/index.ts";
import { cite, sourced } from "../../sources/index.ts";
import { type Scallop, scallopOfArc, scallopOfSag } from "../gathering/scallop.ts";

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
export function dipOf({ making: { relax } }: ResolvedShade, spanMm: number, lengthMm: number): Dip {
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

/** Dip and width as they were found, with their formula. */
export function writeDip(
  { making: { relax } }: ResolvedShade,
  { spanMm, dipMm }: Dip,
  book: WorkingBook,
): void {
  const w = [spanMm, "mm", "between the two columns"] as const;
  const { parameterMm } = scallopOfSag(spanMm, dipMm);
  if (parameterMm === undefined) return;
  const k = [parameterMm, "mm", "parameter of the catenary that hangs so"] as const;
  const byWidth = relax.dipMm === undefined && relax.extraWidthMm !== undefined;
  if (byWidth) {
    book.figure("shape.dip", {
      label: "Dip that the extra width holds",
      symbol: "D",
      unit: "mm",
      formula: "2·k·sinh(w / (4·k))^2",
      given: { k, w },
      cite: cite("catenary"),
      compute: (v) => 2 * v.k * Math.sinh(v.w / (4 * v.k)) ** 2,
    });
    return;
  }
  book.figure("shape.extra-width", {
    label: "Wider at the hem, for the dip",
    symbol: "E",
    unit: "mm",
    formula: "max(0, 2·sqrt(D^2 + 2·k·D) − w)",
    given: { D: [dipMm, "mm", "dip in the middle"], k, w },
    cite: cite("catenary"),
    note: "about 8·D² / (3·w) for a shallow dip",
    compute: ({ D, k: parameter, w: span }) => Math.max(0, 2 * Math.sqrt(D ** 2 + 2 * parameter * D) - span),
  });
}
