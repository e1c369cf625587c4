import { figureRuleOf, type Worked } from "../../figures/index.ts";
import type { ResolvedMaking } from "../../job/index.ts";
import type { Size } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { EVEN_ROWS_BY, type EvenRows, evenRowsOf } from "../base/even-rows.ts";
import { FINISHED_LENGTH } from "../base/size-inputs.ts";

/** Evenly spaced rows of a pleated shade, with what its headrail allowance needs, mm. */
export interface PleatedRows extends EvenRows {
  headrailNeededMm: number;
  /** What of the bottom section that was asked for has room: 1 but on a shade that is too short. */
  share: number;
}

/** The section of the shade below its lowest row, and what it follows from. */
export interface BottomSection {
  /** Lowest row to the lowest point, shade down, mm. */
  mm: number;
  by: readonly string[];
}

const SPACING = figureRuleOf<Pick<BottomSection, "by">>()({
  id: "shape.row-spacing",
  label: "Spacing of rows",
  symbol: "s",
  unit: "mm",
  formula: "(L − b − T) / p",
  inputs: ({ by }) => ({
    L: FINISHED_LENGTH,
    b: ["mm", "lowest row to the lowest point", ...by],
    T: ["mm", "headrail allowance", "fold/headrailMm", "figure:shape.headrail-needed"],
    p: ["count", "rows of rings", ...EVEN_ROWS_BY],
  }),
  cite: cite("geometry", "evenly from the first row to the headrail line"),
  compute: ({ L, b, T, p }) => (L - b - T) / p,
});

/** Rows of rings from the first above the hem to the headrail line, evenly spaced. */
export function layPleatedRows(
  fold: ResolvedMaking["fold"],
  size: Pick<Size, "finishedLengthMm">,
  headrailNeededMm: number,
  bottom: BottomSection,
): Worked<PleatedRows> {
  const laid = evenRowsOf(fold, size, headrailNeededMm, bottom.mm);
  const { bottomSectionMm: b, headrailMm: T, rows } = laid;
  const spacing = SPACING.figure({ L: size.finishedLengthMm, b, T, p: rows.length }, { by: bottom.by });
  return {
    values: { ...laid, headrailNeededMm, share: bottom.mm > 0 ? b / bottom.mm : 1 },
    workings: [spacing],
  };
}
