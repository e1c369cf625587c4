import { type StageResult, staged } from "../../../figures/index.ts";
import { type ReadOf, reads } from "../../../job/index.ts";
import { cite } from "../../../sources/index.ts";
import { COLUMN_READS, layColumns } from "../../base/columns.ts";
import { headrailShort } from "../../base/headrail-short.ts";
import { ringGrid } from "../../base/ring-grid.ts";
import { REPORTED } from "../../base/style-shade.ts";
import type { GridInput, LaidGrid, StyleOf } from "../../style.ts";
import { hobbledForm } from "./hobbled-form.ts";
import { hobbledSteps } from "./hobbled-steps.ts";
import { judgeHobbled } from "./judge-hobbled.ts";
import { hobbledSpacing } from "./spacing.ts";

const HOBBLED_READS = reads({
  shade: [...REPORTED, "mount", "cloths"],
  making: ["hobble", "fold", "mount", "ribs", "board"],
});

/** The hobbled shade: cloth longer than the tapes behind it, in soft folds also when lowered. */
export const hobbled: StyleOf<typeof COLUMN_READS, typeof HOBBLED_READS> = {
  reads: { columns: COLUMN_READS, grid: HOBBLED_READS },
  asks: [
    { group: "hobble", keys: ["rule", "tapeMm", "fullness", "clothMm", "match", "repeats", "folds"] },
    { group: "fold", keys: ["headrailMm"] },
    { group: "columns", keys: ["count"] },
  ],
  columns: layColumns,
  grid: layHobbled,
  inLine: "the folds of a hobbled shade are set by its tapes",
  steps: hobbledSteps,
};

function layHobbled({
  shade,
  size,
  columns,
  headrailNeededMm,
}: GridInput<ReadOf<typeof HOBBLED_READS>>): StageResult<LaidGrid> {
  const headrailMm = shade.making.fold.headrailMm ?? headrailNeededMm;
  const spacing = hobbledSpacing(shade, size.finishedLengthMm);
  const { tapeMm } = spacing.values;
  const laid = ringGrid({
    size,
    columns,
    headrailMm,
    firstMm: tapeMm,
    stepMm: tapeMm,
    stepFigure: "shape.hobble-tape",
    cite: cite("singer-sewing", "a ring at every mark of the tape"),
  });
  const { grid, isTooShort } = laid.values;
  const form = hobbledForm(shade, size, grid, spacing.values);
  return staged(
    { grid, form: form.values },
    {
      findings: () => [
        ...judgeHobbled({ shade, size, grid, form: form.values, spacing: spacing.values, isTooShort }),
        ...headrailShort(shade, headrailMm, headrailNeededMm),
      ],
      workings: () => [...spacing.workings, ...laid.workings, ...form.workings],
    },
  );
}
