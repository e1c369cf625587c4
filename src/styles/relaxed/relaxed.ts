import type { Finding, WorkingBook } from "../../figures/index.ts";
import type { ResolvedShade } from "../../job/index.ts";
import { type Column, columnSpacingMm, type Size } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { drapedShape } from "../draping/draped-shape.ts";
import { finishGrid, gridOf, writeTravel } from "../draping/finish-grid.ts";
import { judgeFolds } from "../flat/judge-folds.ts";
import { layRows, rowsFromHem } from "../flat/rows.ts";
import type { LiftPartsHeight, Style } from "../style.ts";
import { dipOf, writeDip } from "./dip.ts";
import { judgeRelaxed } from "./judge-relaxed.ts";
import { relaxedForm } from "./relaxed-form.ts";
import { relaxedSteps } from "./relaxed-steps.ts";

/** The relaxed shade: two outer columns, nothing across, and a lower edge that dips between them. */
export const relaxed: Style = {
  asks: [
    { group: "relax", keys: ["dipMm", "extraWidthMm", "lowerEdge", "weight"] },
    { group: "fold", keys: ["rows", "headrailMm", "largestSpacingMm"] },
  ],
  columns: outerColumns,
  grid: relaxedGrid,
  shape: drapedShape,
  steps: relaxedSteps,
};

/** The two outer columns, in from the edges; no others. */
function outerColumns(
  { making }: ResolvedShade,
  size: Size,
  book: WorkingBook,
): { columns: Column[]; findings: Finding[] } {
  const width = size.finishedWidthMm;
  const insetMm = Math.min(making.columns.edgeInsetMm, width / 4);
  book.figure("shape.column-spacing", {
    label: "Between the two columns",
    symbol: "w",
    unit: "mm",
    formula: "W − 2·e",
    given: { W: [width, "mm", "finished width"], e: [insetMm, "mm", "edge inset"] },
    cite: cite("relaxed-notes", "outer columns alone"),
    compute: ({ W, e }) => W - 2 * e,
  });
  const columns = [insetMm, width - insetMm].map((xMm, i) => ({ number: i + 1, xMm }));
  return { columns, findings: [] };
}

function relaxedGrid(
  resolved: ResolvedShade,
  size: Size,
  columns: Column[],
  liftParts: LiftPartsHeight,
  book: WorkingBook,
) {
  const length = size.finishedLengthMm;
  const dip = dipOf(resolved, columnSpacingMm(columns), length);
  writeDip(resolved, dip, book);
  const { lowerEdge, weight } = resolved.making.relax;
  const dipped = lowerEdge === "curved" && weight !== "bar" ? belowDip(resolved, dip.dipMm) : resolved;
  const laid = layRows(dipped, size, liftParts, book);
  const { folds } = laid;
  const rows = rowsFromHem(folds, length);
  const { bottomSectionMm, headrailMm } = folds;
  const travelMm = writeTravel(length, { rows, bottomSectionMm, headrailMm }, book);
  const skirtMm = Math.min(folds.skirtMm, resolved.making.fold.skirtMm);
  const bare = gridOf(size, columns, { rows, bottomSectionMm, headrailMm, skirtMm, travelMm });
  const form = relaxedForm(resolved, size, bare, dip);
  const grid = finishGrid(size, bare, form, book);
  return {
    grid,
    form,
    findings: [...judgeFolds(resolved, size, laid, grid), ...judgeRelaxed(resolved, size, dip)],
  };
}

/** Rows are laid as if the columns ended where the dip begins: what dips hangs below the stack like a skirt. */
function belowDip(resolved: ResolvedShade, dipMm: number): ResolvedShade {
  const { fold } = resolved.making;
  return {
    ...resolved,
    making: {
      ...resolved.making,
      fold: { ...fold, skirtMm: fold.skirtMm + dipMm, hemBarMm: fold.hemBarMm + dipMm },
    },
  };
}
