import type { WorkingBook } from "../../figures/index.ts";
import type { ResolvedShade } from "../../job/index.ts";
import type { Size } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { headrailNeeded } from "../flat/rows.ts";
import { type GatheredRows, gatheredRowsOf } from "../gathering/gathered-rows.ts";
import type { LiftPartsHeight } from "../style.ts";

export interface PleatedRows extends GatheredRows {
  headrailNeededMm: number;
  /** What of the bottom section that was asked for has room: 1 but on a shade that is too short. */
  share: number;
}

/** Rows of rings from the first above the hem to the headrail line, evenly spaced. */
export function layPleatedRows(
  resolved: ResolvedShade,
  size: Size,
  liftParts: LiftPartsHeight,
  bottomSectionMm: number,
  book: WorkingBook,
): PleatedRows {
  const headrailNeededMm = headrailNeeded(resolved, liftParts, book);
  const laid = gatheredRowsOf(resolved, size, headrailNeededMm, bottomSectionMm);
  book.figure("shape.row-spacing", {
    label: "Spacing of rows",
    symbol: "s",
    unit: "mm",
    formula: "(L − b − T) / p",
    given: {
      L: [size.finishedLengthMm, "mm", "finished length"],
      b: [laid.bottomSectionMm, "mm", "lowest row to the lowest point"],
      T: [laid.headrailMm, "mm", "headrail allowance"],
      p: [laid.rows.length, "count", "rows of rings"],
    },
    cite: cite("geometry", "evenly from the first row to the headrail line"),
    compute: ({ L, b, T, p }) => (L - b - T) / p,
  });
  return {
    ...laid,
    headrailNeededMm,
    share: bottomSectionMm > 0 ? laid.bottomSectionMm / bottomSectionMm : 1,
  };
}
