import type { WorkingBook } from "../../figures/index.ts";
import type { ResolvedShade } from "../../job/index.ts";
import type { Column, Size } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { layColumns } from "../flat/columns.ts";
import { headrailNeeded } from "../flat/rows.ts";
import { headrailShort } from "../folding/judge-ring-grid.ts";
import { ringGrid } from "../folding/ring-grid.ts";
import type { LiftPartsHeight, Style } from "../style.ts";
import { judgeTucked } from "./judge-tucked.ts";
import { tuckedForm } from "./tucked-form.ts";
import { tuckedShape } from "./tucked-shape.ts";
import { tuckedSteps } from "./tucked-steps.ts";
import { layTucks } from "./tucks.ts";

/** The stitched-tuck shade: narrow tucks across, rings behind every second one, so that it folds on sewn edges. */
export const tucked: Style = {
  asks: [
    { group: "tuck", keys: ["spacingMm", "depthMm", "face"] },
    { group: "fold", keys: ["headrailMm"] },
    { group: "columns", keys: ["count"] },
  ],
  columns: layColumns,
  grid: layTucked,
  shape: tuckedShape,
  steps: tuckedSteps,
};

/** First ring at the first tuck, then at every second: half a fold at the hem, as the half-fold rule has it. */
function layTucked(
  resolved: ResolvedShade,
  size: Size,
  columns: Column[],
  liftParts: LiftPartsHeight,
  book: WorkingBook,
) {
  const neededMm = headrailNeeded(resolved, liftParts, book);
  const headrailMm = resolved.making.fold.headrailMm ?? neededMm;
  const tucks = layTucks(resolved, size.finishedLengthMm, book);
  const { grid, isTooShort } = ringGrid(
    {
      size,
      columns,
      headrailMm,
      firstMm: tucks.spacingMm,
      stepMm: 2 * tucks.spacingMm,
      cite: cite("singer-sewing", "rings on alternate tucks from the bottom"),
    },
    book,
  );
  const form = tuckedForm(resolved, size, grid, tucks, book);
  return {
    grid,
    form,
    findings: [
      ...judgeTucked({ resolved, size, grid, tucks, isTooShort }),
      ...headrailShort(resolved, headrailMm, neededMm),
    ],
  };
}
