import type { WorkingBook } from "../../figures/index.ts";
import type { ResolvedShade } from "../../job/index.ts";
import { type Column, columnSpacingMm, type Grid, type Size } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { judgeRibs } from "../ribbed/judge-ribs.ts";
import { ribbedShape } from "../ribbed/ribbed-shape.ts";
import type { Ask, LiftPartsHeight, Style } from "../style.ts";
import { layColumns } from "./columns.ts";
import { flatForm } from "./flat-form.ts";
import { judgeFolds } from "./judge-folds.ts";
import { layRows, rowsFromHem } from "./rows.ts";

/** What is asked first of a shade that folds row by row. */
export const FOLD_ASKS: readonly Ask[] = [
  { group: "fold", keys: ["rows", "headrailMm", "skirtMm", "largestSpacingMm", "cascadeMm", "gradeStepMm"] },
  { group: "columns", keys: ["count"] },
];

/** The flat Roman shade: smooth when lowered, even or graduated folds when raised. */
export const flat: Style = {
  asks: FOLD_ASKS,
  columns: layColumns,
  grid: (resolved, size, columns, liftParts, book) => {
    const laid = layGrid(resolved, size, columns, liftParts, book);
    return resolved.making.ribs.kind === "none"
      ? laid
      : { ...laid, findings: [...laid.findings, ...judgeRibs(resolved, laid.grid)] };
  },
  shape: ribbedShape,
  steps: () => [],
};

export function layGrid(
  resolved: ResolvedShade,
  size: Size,
  columns: Column[],
  liftParts: LiftPartsHeight,
  book: WorkingBook,
) {
  const laid = layRows(resolved, size, liftParts, book);
  const { folds } = laid;
  const length = size.finishedLengthMm;
  const rows = rowsFromHem(folds, length);
  const topRow = rows.at(-1);

  const raisedHeightMm = raisedHeight(resolved, folds, book);
  const travelMm = book.figure("shape.travel", {
    label: "Travel of the bottom row",
    symbol: "r",
    unit: "mm",
    formula: "max(0, L − d − (R − g))",
    given: {
      L: [length, "mm", "finished length"],
      d: [folds.bottomSectionMm, "mm", "hem to the bottom row"],
      R: [raisedHeightMm, "mm", "raised height"],
      g: [
        raisedHeightMm - (length - folds.bottomSectionMm - folds.travelMm),
        "mm",
        "raised stack below the bottom row’s rings",
      ],
    },
    cite: cite("geometry"),
    compute: ({ L, d, R, g }) => Math.max(0, L - d - (R - g)),
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
    raisedHeightMm,
    travelMm,
    coveredWhenRaisedMm: Math.max(0, raisedHeightMm - (size.openingTopMm ?? 0)),
  };
  return {
    grid,
    form: flatForm(resolved, size, grid),
    findings: judgeFolds(resolved, size, laid, grid),
  };
}

function raisedHeight(
  resolved: ResolvedShade,
  folds: ReturnType<typeof layRows>["folds"],
  book: WorkingBook,
): number {
  const even = resolved.making.fold.rule === "even-fold";
  return book.figure("shape.raised-height", {
    label: "Raised height, top line to hem",
    symbol: "R",
    unit: "mm",
    formula: "T + g",
    given: {
      T: [folds.headrailMm, "mm", "headrail allowance"],
      g: [
        folds.raisedHeightMm - folds.headrailMm,
        "mm",
        even ? "gathered rings and half a fold" : "skirt and half the lowest fold",
      ],
    },
    cite: even ? cite("even-fold-slides") : cite("pocket-spacing"),
    compute: ({ T, g }) => T + g,
  });
}
