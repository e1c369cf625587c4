import { type Figure, figureRuleOf } from "../../figures/index.ts";
import {
  type Column,
  columnSpacingMm,
  type Form,
  type Grid,
  type Row,
  type Size,
} from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { FINISHED_LENGTH } from "../base/size-inputs.ts";
import { drapedPieces } from "./draped-shape.ts";

/** What a style lays its rows by and hangs its cloth by, as figures name what they rest on. */
export interface HangsBy {
  rows: readonly string[];
  cloth: readonly string[];
}

/** Rows as they were laid, before it is known how far the raised shade hangs. */
export interface LaidRows {
  rows: Row[];
  /** Lowest row to the lowest point, shade down, mm. */
  bottomSectionMm: number;
  headrailMm: number;
  skirtMm: number;
  travelMm: number;
}

/** A grid whose raised height is still to be found: zero until `finishGrid`. */
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

const RAISED_HEIGHT = figureRuleOf<HangsBy>()({
  id: "shape.raised-height",
  label: "Raised height, top line to the lowest point",
  symbol: "R",
  unit: "mm",
  formula: "T + g",
  inputs: ({ rows, cloth }) => ({
    T: ["mm", "headrail allowance", ...rows],
    g: ["mm", "what hangs lowest below the gathered rings", ...rows, ...cloth],
  }),
  cite: cite("catenary", "between the columns; beside them a tail as long as its cloth allows"),
  compute: ({ T, g }) => T + g,
});

/** The raised height is that of the lowest point between the columns or beside them, as it is drawn, mm. */
export function finishGrid(size: Size, grid: Grid, form: Form, by: HangsBy): { grid: Grid; raised: Figure } {
  const { lowestYMm } = drapedPieces({ size, grid, form }, 1);
  const raised = RAISED_HEIGHT.figure({ T: grid.headrailMm, g: lowestYMm - grid.headrailMm }, by);
  const finished = {
    ...grid,
    raisedHeightMm: raised.value,
    coveredWhenRaisedMm: Math.max(0, raised.value - (size.openingTopMm ?? 0)),
  };
  return { grid: finished, raised };
}

const TRAVEL = figureRuleOf<HangsBy>()({
  id: "shape.travel",
  label: "Travel of the bottom row",
  symbol: "r",
  unit: "mm",
  formula: "max(0, L − b − T)",
  inputs: ({ rows, cloth }) => ({
    L: FINISHED_LENGTH,
    b: ["mm", "lowest row to the lowest point", ...rows, ...cloth],
    T: ["mm", "headrail allowance", ...rows],
  }),
  cite: cite("geometry"),
  compute: ({ L, b, T }) => Math.max(0, L - b - T),
});

/** Travel of the lowest row, from where it hangs to the headrail line, mm. */
export function travelOf(
  lengthMm: number,
  laid: Pick<LaidRows, "bottomSectionMm" | "headrailMm">,
  by: HangsBy,
): Figure {
  return TRAVEL.figure({ L: lengthMm, b: laid.bottomSectionMm, T: laid.headrailMm }, by);
}
