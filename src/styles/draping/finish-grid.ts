import type { WorkingBook } from "../../figures/index.ts";
import {
  type Column,
  columnSpacingMm,
  type Form,
  type Grid,
  type Row,
  type Size,
} from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { drapedPieces } from "./draped-shape.ts";

/** Rows as they were laid, before it is known how far the raised shade hangs. */
export interface LaidRows {
  rows: Row[];
  /** Lowest row to the lowest point, shade down, mm. */
  bottomSectionMm: number;
  headrailMm: number;
  skirtMm: number;
  travelMm: number;
}

export function gridOf(size: Size, columns: Column[], laid: LaidRows): Grid {
  const { rows, bottomSectionMm, headrailMm, skirtMm, travelMm } = laid;
  return {
    rows,
    columns,
    bottomSectionMm,
    spacingsMm: rows.slice(1).map(({ fromHemMm }, i) => fromHemMm - (rows[i]?.fromHemMm ?? 0)),
    topSectionMm: rows.at(-1)?.yMm ?? size.finishedLengthMm,
    columnSpacingMm: columnSpacingMm(columns),
    headrailMm,
    skirtMm,
    raisedHeightMm: 0,
    travelMm,
    coveredWhenRaisedMm: 0,
  };
}

/** The raised height is that of the lowest point between the columns or beside them, as it is drawn. */
export function finishGrid(size: Size, grid: Grid, form: Form, book: WorkingBook): Grid {
  const { lowestYMm } = drapedPieces({ size, grid, form }, 1);
  const raisedHeightMm = book.figure("shape.raised-height", {
    label: "Raised height, top line to the lowest point",
    symbol: "R",
    unit: "mm",
    formula: "T + g",
    given: {
      T: [grid.headrailMm, "mm", "headrail allowance"],
      g: [lowestYMm - grid.headrailMm, "mm", "what hangs lowest below the gathered rings"],
    },
    cite: cite("catenary", "between the columns; beside them a tail as long as its cloth allows"),
    compute: ({ T, g }) => T + g,
  });
  return {
    ...grid,
    raisedHeightMm,
    coveredWhenRaisedMm: Math.max(0, raisedHeightMm - (size.openingTopMm ?? 0)),
  };
}

/** Travel of the lowest row, from where it hangs to the headrail line. */
export function writeTravel(
  lengthMm: number,
  laid: Omit<LaidRows, "travelMm" | "skirtMm">,
  book: WorkingBook,
): number {
  return book.figure("shape.travel", {
    label: "Travel of the bottom row",
    symbol: "r",
    unit: "mm",
    formula: "max(0, L − b − T)",
    given: {
      L: [lengthMm, "mm", "finished length"],
      b: [laid.bottomSectionMm, "mm", "lowest row to the lowest point"],
      T: [laid.headrailMm, "mm", "headrail allowance"],
    },
    cite: cite("geometry"),
    compute: ({ L, b, T }) => Math.max(0, L - b - T),
  });
}
