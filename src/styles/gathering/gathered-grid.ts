import type { WorkingBook } from "../../figures/index.ts";
import type { ResolvedShade } from "../../job/index.ts";
import { type Column, columnSpacingMm, type Grid, type Size } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { headrailNeeded } from "../flat/rows.ts";
import type { LiftPartsHeight } from "../style.ts";
import { type GatheredRows, gatheredRowsOf } from "./gathered-rows.ts";

export interface GatheredGridAsk {
  resolved: ResolvedShade;
  size: Size;
  columns: Column[];
  liftParts: LiftPartsHeight;
  /** Lowest row to the hem at a column, and how far the scallops hang below that, lowered and raised, mm. */
  hemRowMm: number;
  sagMm: number;
  /** How far they hang once raised by this travel, mm. */
  raisedSagMm: (travelMm: number) => number;
}

export interface GatheredGrid {
  grid: Grid;
  laid: GatheredRows;
  headrailNeededMm: number;
}

/** The ring grid of a gathered or shirred shade: even rows from the lowest one to the headrail line. */
export function gatheredGrid(ask: GatheredGridAsk, book: WorkingBook): GatheredGrid {
  const { resolved, size, columns, hemRowMm, sagMm } = ask;
  const length = size.finishedLengthMm;
  const headrailNeededMm = headrailNeeded(resolved, ask.liftParts, book);
  const laid = gatheredRowsOf(resolved, size, headrailNeededMm, hemRowMm + sagMm);
  writeRows(resolved, length, laid, book);
  const raisedHeightMm = book.figure("shape.raised-height", {
    label: "Raised height, top line to the lowest point",
    symbol: "R",
    unit: "mm",
    formula: "min(L, T + max(h, s / 2) + D)",
    given: {
      L: [length, "mm", "finished length"],
      T: [laid.headrailMm, "mm", "headrail allowance"],
      h: [hemRowMm, "mm", "lowest ring to the hem"],
      s: [laid.spacingMm, "mm", "spacing of rows; a gathered loop hangs by half of it"],
      D: [ask.raisedSagMm(laid.travelMm), "mm", "a scallop hangs by, raised"],
    },
    cite: cite("geometry"),
    compute: ({ L, T, h, s, D }) => Math.min(L, T + Math.max(h, s / 2) + D),
  });
  const grid: Grid = {
    rows: laid.rows,
    columns,
    bottomSectionMm: laid.bottomSectionMm,
    spacingsMm: laid.rows.slice(1).map(() => laid.spacingMm),
    topSectionMm: laid.headrailMm + laid.spacingMm,
    columnSpacingMm: columnSpacingMm(columns),
    headrailMm: laid.headrailMm,
    skirtMm: 0,
    raisedHeightMm,
    travelMm: laid.travelMm,
    coveredWhenRaisedMm: Math.max(0, raisedHeightMm - (size.openingTopMm ?? 0)),
  };
  return { grid, laid, headrailNeededMm };
}

function writeRows(
  { making: { fold } }: ResolvedShade,
  length: number,
  laid: GatheredRows,
  book: WorkingBook,
): void {
  const L = [length, "mm", "finished length"] as const;
  const b = [laid.bottomSectionMm, "mm", "lowest row to the lowest point"] as const;
  const T = [laid.headrailMm, "mm", "headrail allowance"] as const;
  if (fold.rows === undefined && fold.spacingMm === undefined && laid.unmet.length === 0) {
    book.figure("shape.rows", {
      label: "Rows of rings",
      symbol: "p",
      unit: "count",
      formula: "max(1, ceil((L − b − T) / m))",
      given: { L, b, T, m: [fold.largestSpacingMm, "mm", "largest spacing of rows"] },
      cite: cite("balloon-2009", "rows 7 to 10 in apart; the largest spacing is a setting"),
      compute: (v) => Math.max(1, Math.ceil((v.L - v.b - v.T) / v.m - 1e-9)),
    });
  }
  book.figure("shape.row-spacing", {
    label: "Spacing of rows",
    symbol: "s",
    unit: "mm",
    formula: "(L − b − T) / p",
    given: { L, b, T, p: [laid.rows.length, "count", "rows of rings"] },
    cite: cite("geometry", "from the lowest row to the headrail line"),
    compute: (v) => (v.L - v.b - v.T) / v.p,
  });
  book.figure("shape.travel", {
    label: "Travel of the bottom row",
    symbol: "r",
    unit: "mm",
    formula: "L − b − T",
    given: { L, b, T },
    cite: cite("geometry"),
    compute: (v) => v.L - v.b - v.T,
  });
}
