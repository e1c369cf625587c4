import type { WorkingBook } from "../../figures/index.ts";
import { type Column, columnSpacingMm, type Grid, type Row, type Size } from "../../shade-plan/index.ts";
import { type Cite, cite } from "../../sources/index.ts";
import { FIT_SLACK } from "../../units/index.ts";

export interface RingGridAsk {
  size: Size;
  columns: Column[];
  headrailMm: number;
  /** Hem to the first row, and from row to row, mm. */
  firstMm: number;
  stepMm: number;
  cite: Cite;
}

/**
 * Rings at a fixed spacing from the hem up, as far as the headrail allowance lets them: where tucks or tape marks
 * decide where a ring can sit, the rows cannot be spread to fill the length.
 */
export function ringGrid(ask: RingGridAsk, book: WorkingBook): { grid: Grid; isTooShort: boolean } {
  const { size, columns, headrailMm, stepMm } = ask;
  const length = size.finishedLengthMm;
  const isTooShort = length - headrailMm < ask.firstMm;
  // A shade shorter than that still gets a row, halfway at most, so that it can be drawn and judged.
  const firstMm = Math.min(ask.firstMm, length / 2);
  const L = [length, "mm", "finished length"] as const;
  const d = [firstMm, "mm", "hem to the bottom row"] as const;
  const T = [Math.min(headrailMm, length - firstMm), "mm", "headrail allowance"] as const;
  const count = book.figure("shape.rows", {
    label: "Rows of rings",
    symbol: "p",
    unit: "count",
    formula: "max(0, floor((L − T − d) / s)) + 1",
    given: { L, T, d, s: [stepMm, "mm", "from row to row"] },
    cite: ask.cite,
    note: "as many as stay below the headrail allowance",
    compute: (v) => Math.max(0, Math.floor((v.L - v.T - v.d) / v.s + FIT_SLACK)) + 1,
  });
  const raisedHeightMm = book.figure("shape.raised-height", {
    label: "Raised height, top line to hem",
    symbol: "R",
    unit: "mm",
    formula: "T + d",
    given: { T, d },
    cite: cite("geometry"),
    compute: (v) => v.T + v.d,
  });
  const travelMm = book.figure("shape.travel", {
    label: "Travel of the bottom row",
    symbol: "r",
    unit: "mm",
    formula: "max(0, L − d − T)",
    given: { L, d, T },
    cite: cite("geometry"),
    compute: (v) => Math.max(0, v.L - v.d - v.T),
  });
  const rows: Row[] = Array.from({ length: count }, (_, i) => {
    const fromHemMm = firstMm + i * stepMm;
    return { number: i + 1, fromHemMm, yMm: length - fromHemMm };
  });
  const grid: Grid = {
    rows,
    columns,
    bottomSectionMm: firstMm,
    spacingsMm: rows.slice(1).map(() => stepMm),
    topSectionMm: rows.at(-1)?.yMm ?? length,
    columnSpacingMm: columnSpacingMm(columns),
    headrailMm: T[0],
    skirtMm: 0,
    raisedHeightMm,
    travelMm,
    coveredWhenRaisedMm: Math.max(0, raisedHeightMm - (size.openingTopMm ?? 0)),
  };
  return { grid, isTooShort };
}
