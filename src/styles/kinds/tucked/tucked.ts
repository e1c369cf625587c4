import { type StageResult, staged } from "../../../figures/index.ts";
import { type ReadOf, reads } from "../../../job/index.ts";
import { cite } from "../../../sources/index.ts";
import { COLUMN_READS, layColumns } from "../../base/columns.ts";
import { headrailShort } from "../../base/headrail-short.ts";
import { ringGrid } from "../../base/ring-grid.ts";
import { REPORTED } from "../../base/style-shade.ts";
import type { GridInput, LaidGrid, StyleOf } from "../../style.ts";
import { judgeTucked } from "./judge-tucked.ts";
import { tuckedForm } from "./tucked-form.ts";
import { tuckedSteps } from "./tucked-steps.ts";
import { layTucks } from "./tucks.ts";

const TUCKED_READS = reads({
  shade: [...REPORTED, "cloths"],
  making: ["tuck", "fold", "ribs", "board"],
});

/** The stitched-tuck shade: narrow tucks across, rings behind every second one, so that it folds on sewn edges. */
export const tucked: StyleOf<typeof COLUMN_READS, typeof TUCKED_READS> = {
  reads: { columns: COLUMN_READS, grid: TUCKED_READS },
  asks: [
    { group: "tuck", keys: ["spacingMm", "depthMm", "face"] },
    { group: "fold", keys: ["headrailMm"] },
    { group: "columns", keys: ["count"] },
  ],
  columns: layColumns,
  grid: layTucked,
  inLine: "the rows of a tucked shade are set by its tucks",
  steps: tuckedSteps,
};

/** First ring at the first tuck, then at every second: half a fold at the hem, as the half-fold rule has it. */
function layTucked({
  shade,
  size,
  columns,
  headrailNeededMm,
}: GridInput<ReadOf<typeof TUCKED_READS>>): StageResult<LaidGrid> {
  const headrailMm = shade.making.fold.headrailMm ?? headrailNeededMm;
  const tucks = layTucks(shade.making, size.finishedLengthMm);
  const { spacingMm } = tucks.values;
  const laid = ringGrid({
    size,
    columns,
    headrailMm,
    firstMm: spacingMm,
    stepMm: 2 * spacingMm,
    stepFigure: "shape.tuck-spacing",
    cite: cite("singer-sewing", "rings on alternate tucks from the bottom"),
  });
  const { grid, isTooShort } = laid.values;
  const form = tuckedForm(shade, size, grid, tucks.values);
  return staged(
    { grid, form: form.values },
    {
      findings: () => [
        ...judgeTucked({ shade, size, grid, tucks: tucks.values, isTooShort }),
        ...headrailShort(shade, headrailMm, headrailNeededMm),
      ],
      workings: () => [...tucks.workings, ...laid.workings, ...form.workings],
    },
  );
}
