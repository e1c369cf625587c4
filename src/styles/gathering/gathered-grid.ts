import { type Figure, figureRuleOf, type Worked } from "../../figures/index.ts";
import type { ResolvedMaking } from "../../job/index.ts";
import { type Column, columnSpacingMm, type Grid, type Size } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { EVEN_ROWS_BY, type EvenRows, evenRowsOf } from "../base/even-rows.ts";
import { FINISHED_LENGTH } from "../base/size-inputs.ts";

/** What the grid of a gathered shade follows from. */
export interface GatheredGridAsk {
  fold: ResolvedMaking["fold"];
  size: Size;
  columns: Column[];
  headrailNeededMm: number;
  /** Lowest row to the hem at a column, and how far the scallops hang below that, lowered and raised, mm. */
  hemRowMm: number;
  sagMm: number;
  /** How far they hang once raised by this travel, mm. */
  raisedSagMm: (travelMm: number) => number;
  /** What the scallops hang by, as figures name what they rest on. */
  hangsBy: readonly string[];
}

/** The grid, and its rows with what of them does not hold, for findings. */
export interface GatheredGrid {
  grid: Grid;
  laid: EvenRows;
  headrailNeededMm: number;
}

/** The ring grid of a gathered or shirred shade: even rows from the lowest one to the headrail line. */
export function gatheredGrid(ask: GatheredGridAsk): Worked<GatheredGrid> {
  const { size, columns, hemRowMm, sagMm, headrailNeededMm, hangsBy } = ask;
  const length = size.finishedLengthMm;
  const laid = evenRowsOf(ask.fold, size, headrailNeededMm, hemRowMm + sagMm);
  const raised = RAISED_HEIGHT.figure(
    {
      L: length,
      T: laid.headrailMm,
      h: hemRowMm,
      s: laid.spacingMm,
      D: ask.raisedSagMm(laid.travelMm),
    },
    { hangsBy },
  );
  const grid: Grid = {
    rows: laid.rows,
    columns,
    bottomSectionMm: laid.bottomSectionMm,
    spacingsMm: laid.rows.slice(1).map(() => laid.spacingMm),
    topSectionMm: laid.headrailMm + laid.spacingMm,
    columnSpacingMm: columnSpacingMm(columns),
    headrailMm: laid.headrailMm,
    skirtMm: 0,
    raisedHeightMm: raised.value,
    travelMm: laid.travelMm,
    coveredWhenRaisedMm: Math.max(0, raised.value - (size.openingTopMm ?? 0)),
  };
  return {
    values: { grid, laid, headrailNeededMm },
    workings: [...rowFigures(ask, laid), raised],
  };
}

type HangsOf = Pick<GatheredGridAsk, "hangsBy">;

const HEADRAIL = ["mm", "headrail allowance", ...EVEN_ROWS_BY] as const;
const bottom = ({ hangsBy }: HangsOf) => ["mm", "lowest row to the lowest point", ...hangsBy] as const;

const RAISED_HEIGHT = figureRuleOf<HangsOf>()({
  id: "shape.raised-height",
  label: "Raised height, top line to the lowest point",
  symbol: "R",
  unit: "mm",
  formula: "min(L, T + max(h, s / 2) + D)",
  inputs: ({ hangsBy }) => ({
    L: FINISHED_LENGTH,
    T: HEADRAIL,
    h: ["mm", "lowest ring to the hem", "gather/hemRowMm"],
    s: ["mm", "spacing of rows; a gathered loop hangs by half of it", "figure:shape.row-spacing"],
    D: ["mm", "a scallop hangs by, raised", ...hangsBy],
  }),
  cite: cite("geometry"),
  compute: ({ L, T, h, s, D }) => Math.min(L, T + Math.max(h, s / 2) + D),
});

const ROWS = figureRuleOf<HangsOf>()({
  id: "shape.rows",
  label: "Rows of rings",
  symbol: "p",
  unit: "count",
  formula: "max(1, ceil((L − b − T) / m))",
  inputs: (of) => ({
    L: FINISHED_LENGTH,
    b: bottom(of),
    T: HEADRAIL,
    m: ["mm", "largest spacing of rows", "fold/largestSpacingMm"],
  }),
  restsOn: ["fold/rows", "fold/spacingMm"],
  cite: cite("balloon-2009", "rows 7 to 10 in apart; the largest spacing is a setting"),
  compute: ({ L, b, T, m }) => Math.max(1, Math.ceil((L - b - T) / m - 1e-9)),
});

const SPACING = figureRuleOf<HangsOf>()({
  id: "shape.row-spacing",
  label: "Spacing of rows",
  symbol: "s",
  unit: "mm",
  formula: "(L − b − T) / p",
  inputs: (of) => ({
    L: FINISHED_LENGTH,
    b: bottom(of),
    T: HEADRAIL,
    p: ["count", "rows of rings", ...EVEN_ROWS_BY],
  }),
  cite: cite("geometry", "from the lowest row to the headrail line"),
  compute: ({ L, b, T, p }) => (L - b - T) / p,
});

const TRAVEL = figureRuleOf<HangsOf>()({
  id: "shape.travel",
  label: "Travel of the bottom row",
  symbol: "r",
  unit: "mm",
  formula: "L − b − T",
  inputs: (of) => ({ L: FINISHED_LENGTH, b: bottom(of), T: HEADRAIL }),
  cite: cite("geometry"),
  compute: ({ L, b, T }) => L - b - T,
});

function rowFigures({ fold, size, hangsBy }: GatheredGridAsk, laid: EvenRows): Figure[] {
  const section = { L: size.finishedLengthMm, b: laid.bottomSectionMm, T: laid.headrailMm };
  const isCounted = fold.rows === undefined && fold.spacingMm === undefined && laid.unmet.length === 0;
  return [
    ...(isCounted ? [ROWS.figure({ ...section, m: fold.largestSpacingMm }, { hangsBy })] : []),
    SPACING.figure({ ...section, p: laid.rows.length }, { hangsBy }),
    TRAVEL.figure(section, { hangsBy }),
  ];
}
