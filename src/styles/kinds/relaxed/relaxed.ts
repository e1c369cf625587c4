import { figureRule, type StageResult, staged } from "../../../figures/index.ts";
import { type ReadOf, type ResolvedMaking, reads } from "../../../job/index.ts";
import { type Column, columnSpacingMm } from "../../../shade-plan/index.ts";
import { cite } from "../../../sources/index.ts";
import { COLUMN_READS } from "../../base/columns.ts";
import { FINISHED_WIDTH } from "../../base/size-inputs.ts";
import { REPORTED } from "../../base/style-shade.ts";
import { finishGrid, gridOf, type HangsBy, travelOf } from "../../draping/finish-grid.ts";
import { FOLD_RULE_RESTS_ON } from "../../folding/fold-figures.ts";
import { judgeFolds } from "../../folding/judge-folds.ts";
import { layRows, rowsFromHem } from "../../folding/rows.ts";
import type { ColumnsInput, GridInput, LaidGrid, StyleOf } from "../../style.ts";
import { DIP_BY, dipFigures, dipOf } from "./dip.ts";
import { judgeRelaxed } from "./judge-relaxed.ts";
import { relaxedForm } from "./relaxed-form.ts";
import { relaxedSteps } from "./relaxed-steps.ts";

const RELAXED_READS = reads({
  shade: [...REPORTED, "cloths"],
  making: ["relax", "fold", "columns", "ribs", "board"],
});

/** The relaxed shade: two outer columns, nothing across, and a lower edge that dips between them. */
export const relaxed: StyleOf<typeof COLUMN_READS, typeof RELAXED_READS> = {
  reads: { columns: COLUMN_READS, grid: RELAXED_READS },
  asks: [
    { group: "relax", keys: ["dipMm", "extraWidthMm", "lowerEdge", "weight"] },
    { group: "fold", keys: ["rows", "headrailMm", "largestSpacingMm"] },
  ],
  columns: outerColumns,
  grid: relaxedGrid,
  inLine: "the folds of a relaxed shade sag between its cords",
  steps: relaxedSteps,
};

const SPACING = figureRule({
  id: "shape.column-spacing",
  label: "Between the two columns",
  symbol: "w",
  unit: "mm",
  formula: "W − 2·e",
  inputs: {
    W: FINISHED_WIDTH,
    e: ["mm", "edge inset", "columns/edgeInsetMm"],
  },
  cite: cite("relaxed-notes", "outer columns alone"),
  compute: ({ W, e }) => W - 2 * e,
});

/** The two outer columns, in from the edges; no others. */
function outerColumns({ shade, size }: ColumnsInput<ReadOf<typeof COLUMN_READS>>): StageResult<Column[]> {
  const width = size.finishedWidthMm;
  const insetMm = Math.min(shade.making.columns.edgeInsetMm, width / 4);
  const columns = [insetMm, width - insetMm].map((xMm, i) => ({ number: i + 1, xMm }));
  return { values: columns, findings: [], workings: [SPACING.figure({ W: width, e: insetMm })] };
}

/** What hangs below the lowest rings follows the dip, where the lower edge is cut to it. */
const SKIRT_BY = [...DIP_BY, "relax/lowerEdge", "relax/weight"];
const HANGS_BY: HangsBy = {
  rows: [...FOLD_RULE_RESTS_ON, ...SKIRT_BY],
  cloth: ["relax/widening", "board/barShorterMm"],
};

function relaxedGrid({
  shade,
  size,
  columns,
  headrailNeededMm,
}: GridInput<ReadOf<typeof RELAXED_READS>>): StageResult<LaidGrid> {
  const { making } = shade;
  const length = size.finishedLengthMm;
  const dip = dipOf(making.relax, columnSpacingMm(columns), length);
  const { lowerEdge, weight } = making.relax;
  const fold = lowerEdge === "curved" && weight !== "bar" ? belowDip(making.fold, dip.dipMm) : making.fold;
  const laid = layRows(fold, size, headrailNeededMm, SKIRT_BY);
  const { folds } = laid.values;
  const rows = rowsFromHem(folds, length);
  const { bottomSectionMm, headrailMm } = folds;
  const travel = travelOf(length, folds, HANGS_BY);
  const skirtMm = Math.min(folds.skirtMm, making.fold.skirtMm);
  const bare = gridOf(size, columns, {
    ...{ rows, bottomSectionMm, headrailMm, skirtMm },
    travelMm: travel.value,
  });
  const form = relaxedForm(making, size, bare, dip);
  const { grid, raised } = finishGrid(size, bare, form, HANGS_BY);
  return staged(
    { grid, form },
    {
      findings: () => [...judgeFolds(shade, size, laid.values, grid), ...judgeRelaxed(shade, size, dip)],
      workings: () => [...dipFigures(making.relax, dip), ...laid.workings, travel, raised],
    },
  );
}

/** Rows are laid as if the columns ended where the dip begins: what dips hangs below the stack like a skirt. */
function belowDip(fold: ResolvedMaking["fold"], dipMm: number): ResolvedMaking["fold"] {
  return { ...fold, skirtMm: fold.skirtMm + dipMm, hemBarMm: fold.hemBarMm + dipMm };
}
