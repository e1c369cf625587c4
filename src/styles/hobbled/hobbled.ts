import type { WorkingBook } from "../../figures/index.ts";
import type { ResolvedShade } from "../../job/index.ts";
import type { Column, Size } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { layColumns } from "../flat/columns.ts";
import { headrailNeeded } from "../flat/rows.ts";
import { headrailShort } from "../folding/judge-ring-grid.ts";
import { ringGrid } from "../folding/ring-grid.ts";
import type { LiftPartsHeight, Style } from "../style.ts";
import { hobbledForm } from "./hobbled-form.ts";
import { hobbledShape } from "./hobbled-shape.ts";
import { hobbledSteps } from "./hobbled-steps.ts";
import { judgeHobbled } from "./judge-hobbled.ts";
import { hobbledSpacing } from "./spacing.ts";

/** The hobbled shade: cloth longer than the tapes behind it, in soft folds also when lowered. */
export const hobbled: Style = {
  asks: [
    { group: "hobble", keys: ["rule", "tapeMm", "fullness", "clothMm", "match", "repeats", "folds"] },
    { group: "fold", keys: ["headrailMm"] },
    { group: "columns", keys: ["count"] },
  ],
  columns: layColumns,
  grid: layHobbled,
  shape: hobbledShape,
  steps: hobbledSteps,
};

function layHobbled(
  resolved: ResolvedShade,
  size: Size,
  columns: Column[],
  liftParts: LiftPartsHeight,
  book: WorkingBook,
) {
  const neededMm = headrailNeeded(resolved, liftParts, book);
  const headrailMm = resolved.making.fold.headrailMm ?? neededMm;
  const spacing = hobbledSpacing(resolved, size.finishedLengthMm, book);
  const { grid, isTooShort } = ringGrid(
    {
      size,
      columns,
      headrailMm,
      firstMm: spacing.tapeMm,
      stepMm: spacing.tapeMm,
      cite: cite("singer-sewing", "a ring at every mark of the tape"),
    },
    book,
  );
  const form = hobbledForm(resolved, size, grid, spacing, book);
  return {
    grid,
    form,
    findings: [
      ...judgeHobbled({ resolved, size, grid, form, spacing, isTooShort }),
      ...headrailShort(resolved, headrailMm, neededMm),
    ],
  };
}
