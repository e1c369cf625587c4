import type { Finding, WorkingBook } from "../../figures/index.ts";
import type { ResolvedShade } from "../../job/index.ts";
import type { Column, Size } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { drapedShape } from "../draping/draped-shape.ts";
import { finishGrid, gridOf, writeTravel } from "../draping/finish-grid.ts";
import { judgePleats } from "../draping/judge-pleats.ts";
import { judgeRows } from "../draping/judge-rows.ts";
import { layPleatedRows } from "../draping/pleated-rows.ts";
import { writePieces } from "../draping/write-pleats.ts";
import { layColumns } from "../flat/columns.ts";
import { scallopWithin } from "../gathering/scallop.ts";
import { writeSag } from "../gathering/write-scallop.ts";
import type { LiftPartsHeight, Style } from "../style.ts";
import { balloonForm, bayEase, laidPleats } from "./balloon-form.ts";
import { balloonSteps } from "./balloon-steps.ts";
import { judgeBalloon } from "./judge-balloon.ts";
import { lowestPouf, smaller } from "./pouf.ts";

/** The pleated balloon: poufs between columns that stand in pleats, which open towards the hem. */
export const pleatedBalloon: Style = {
  asks: [
    { group: "pleat", keys: ["poufMm", "foldedMm", "kind", "held", "edges"] },
    { group: "pouf", keys: ["marks", "clothMm"] },
    { group: "columns", keys: ["count"] },
    { group: "fold", keys: ["rows", "headrailMm", "largestSpacingMm"] },
  ],
  columns: poufColumns,
  grid: balloonGrid,
  shape: drapedShape,
  steps: balloonSteps,
};

/** As many columns as keep every pouf within its width. */
function poufColumns(
  resolved: ResolvedShade,
  size: Size,
  book: WorkingBook,
): { columns: Column[]; findings: Finding[] } {
  const { columns, pleat } = resolved.making;
  return layColumns(
    { ...resolved, making: { ...resolved.making, columns: { ...columns, largestSpacingMm: pleat.poufMm } } },
    size,
    book,
  );
}

function balloonGrid(
  resolved: ResolvedShade,
  size: Size,
  columns: Column[],
  liftParts: LiftPartsHeight,
  book: WorkingBook,
) {
  const length = size.finishedLengthMm;
  const pleats = laidPleats(resolved, columns);
  const ease = bayEase(resolved, columns, length);
  const bays = ease.map(({ fromMm, toMm, extraMm }) => ({
    spanMm: toMm - fromMm,
    // A bar in the hem lets nothing hang between the columns.
    arcMm: toMm - fromMm + (resolved.making.pleat.bar === "none" ? extraMm : 0),
  }));
  const wanted = lowestPouf(resolved, bays, length);
  const sagMm = Math.max(0, ...wanted.sagsMm);
  const deepest = bays[wanted.sagsMm.indexOf(sagMm)];
  if (deepest !== undefined && sagMm > 0)
    writeSag(
      scallopWithin(deepest.spanMm, deepest.arcMm, wanted.clothMm),
      "Middle of a pouf below its corners",
      book,
    );
  book.figure("shape.bottom-section", {
    label: "Lowest ring to the lowest point, shade down",
    symbol: "b",
    unit: "mm",
    formula: "max(k + D, (P + D) / 2, q)",
    given: {
      k: [wanted.firstRingMm, "mm", "lowest ring to the hem"],
      D: [sagMm, "mm", "middle of a pouf below its corners"],
      P: [wanted.clothMm, "mm", "cloth that stays up in the pouf"],
      q: [wanted.loops > 0 ? wanted.clothMm / (2 * wanted.loops) : 0, "mm", "a fold of it at the columns"],
    },
    cite: cite("catenary"),
    compute: ({ k, D, P, q }) => Math.max(k + D, (P + D) / 2, q),
  });
  const laid = layPleatedRows(resolved, size, liftParts, wanted.bottomMm, book);
  const pouf = smaller(wanted, laid.share);
  const travelMm = writeTravel(length, laid, book);
  const bare = gridOf(size, columns, { ...laid, skirtMm: 0, travelMm });
  const form = balloonForm(resolved, bare, { pleats, ease, pouf });
  writePieces(resolved, size, form, book);
  const grid = finishGrid(size, bare, form, book);
  return {
    grid,
    form,
    findings: [
      ...judgeRows(resolved, size, laid, grid),
      ...judgePleats(resolved, size, form),
      ...judgeBalloon(resolved, size, form),
    ],
  };
}
