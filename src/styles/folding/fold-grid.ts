import { figureRule, figureRuleOf, type StageResult, staged } from "../../figures/index.ts";
import { reads } from "../../job/index.ts";
import { columnSpacingMm, type Grid } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { FINISHED_LENGTH } from "../base/size-inputs.ts";
import { REPORTED, type ShadeWith } from "../base/style-shade.ts";
import type { Ask, GridInput, LaidGrid } from "../style.ts";
import { flatForm } from "./flat-form.ts";
import { FOLD_RULE_RESTS_ON } from "./fold-figures.ts";
import { judgeFolds } from "./judge-folds.ts";
import { layRows, rowsFromHem } from "./rows.ts";

/** What is asked first of a shade that folds row by row. */
export const FOLD_ASKS: readonly Ask[] = [
  { group: "fold", keys: ["rows", "headrailMm", "skirtMm", "largestSpacingMm", "cascadeMm", "gradeStepMm"] },
  { group: "columns", keys: ["count"] },
];

/** What a shade reads that folds row by row, with or without ribs. */
export const FOLD_READS = reads({
  shade: [...REPORTED, "cloths", "rib"],
  making: ["fold", "ribs", "board"],
});

const RAISED_HEIGHT = figureRuleOf<{ even: boolean }>()({
  id: "shape.raised-height",
  label: "Raised height, top line to hem",
  symbol: "R",
  unit: "mm",
  formula: "T + g",
  inputs: ({ even }) => ({
    T: ["mm", "headrail allowance", "fold/headrailMm", "figure:shape.headrail-needed"],
    g: [
      "mm",
      even ? "gathered rings and half a fold" : "skirt and half the lowest fold",
      ...FOLD_RULE_RESTS_ON,
    ],
  }),
  cite: ({ even }) => (even ? cite("even-fold-slides") : cite("pocket-spacing")),
  compute: ({ T, g }) => T + g,
});

const TRAVEL = figureRule({
  id: "shape.travel",
  label: "Travel of the bottom row",
  symbol: "r",
  unit: "mm",
  formula: "max(0, L − d − (R − g))",
  inputs: {
    L: FINISHED_LENGTH,
    d: ["mm", "hem to the bottom row", ...FOLD_RULE_RESTS_ON],
    R: ["mm", "raised height", "figure:shape.raised-height"],
    g: ["mm", "raised stack below the bottom row’s rings"],
  },
  cite: cite("geometry"),
  compute: ({ L, d, R, g }) => Math.max(0, L - d - (R - g)),
});

/** The grid of a shade that folds row by row, by the fold rule that its maker chose. */
export function layGrid({
  shade,
  size,
  columns,
  headrailNeededMm,
}: GridInput<ShadeWith<"fold" | "ribs" | "board">>): StageResult<LaidGrid> {
  const laid = layRows(shade.making.fold, size, headrailNeededMm);
  const { folds } = laid.values;
  const length = size.finishedLengthMm;
  const rows = rowsFromHem(folds, length);
  const topRow = rows.at(-1);

  const raised = RAISED_HEIGHT.figure(
    { T: folds.headrailMm, g: folds.raisedHeightMm - folds.headrailMm },
    { even: shade.making.fold.rule === "even-fold" },
  );
  const R = raised.value;
  const travel = TRAVEL.figure({
    L: length,
    d: folds.bottomSectionMm,
    R,
    g: R - (length - folds.bottomSectionMm - folds.travelMm),
  });

  const grid: Grid = {
    rows,
    columns,
    bottomSectionMm: folds.bottomSectionMm,
    spacingsMm: folds.foldsMm.slice(0, -1),
    topSectionMm: topRow?.yMm ?? length,
    columnSpacingMm: columnSpacingMm(columns),
    headrailMm: folds.headrailMm,
    skirtMm: folds.skirtMm,
    raisedHeightMm: R,
    travelMm: travel.value,
    coveredWhenRaisedMm: Math.max(0, R - (size.openingTopMm ?? 0)),
  };
  return staged(
    { grid, form: flatForm(shade, size, grid) },
    {
      findings: () => judgeFolds(shade, size, laid.values, grid),
      workings: () => [...laid.workings, raised, travel],
    },
  );
}
