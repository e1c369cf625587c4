import type { WorkingBook } from "../../figures/index.ts";
import type { ResolvedShade } from "../../job/index.ts";
import { type Column, columnSpacingMm, type Size } from "../../shade-plan/index.ts";
import { layColumns } from "../flat/columns.ts";
import { gatheredGrid } from "../gathering/gathered-grid.ts";
import { judgeGathers } from "../gathering/judge-gathers.ts";
import { DEEPEST_SHARE, type Scallop, scallopOfArc, scallopOfSag } from "../gathering/scallop.ts";
import { writeArc, writeSag } from "../gathering/write-scallop.ts";
import type { LiftPartsHeight, Style } from "../style.ts";
import { austrianForm } from "./austrian-form.ts";
import { austrianShape } from "./austrian-shape.ts";
import { austrianSteps } from "./austrian-steps.ts";
import { judgeAustrian } from "./judge-austrian.ts";

/**
 * The Austrian shade: cloth shirred onto tapes along its whole length, swag over swag, lowered as well as raised.
 * In the United Kingdom it is a festoon, and “Austrian” there is our gathered festoon.
 */
export const austrian: Style = {
  asks: [
    { group: "gather", keys: ["lengthFullness", "scallopExtraMm", "sagMm", "weight", "drawInMm", "frillMm"] },
    { group: "columns", keys: ["count", "largestSpacingMm"] },
    { group: "fold", keys: ["rows", "largestSpacingMm", "headrailMm"] },
  ],
  columns: layColumns,
  grid: layAustrian,
  shape: austrianShape,
  steps: austrianSteps,
};

function layAustrian(
  resolved: ResolvedShade,
  size: Size,
  columns: Column[],
  liftParts: LiftPartsHeight,
  book: WorkingBook,
) {
  const asked = askedScallop(resolved, columns);
  const deepestMm = DEEPEST_SHARE * size.finishedLengthMm;
  const scallop = asked.sagMm > deepestMm ? scallopOfSag(asked.spanMm, deepestMm) : asked;
  const sagMm = writeSag(scallop, "A scallop hangs by", book);
  if (resolved.making.gather.sagMm !== undefined) writeArc(scallop, book);
  const laid = gatheredGrid(
    { resolved, size, columns, liftParts, hemRowMm: 0, sagMm, raisedSagMm: () => sagMm },
    book,
  );
  const form = austrianForm(resolved, size, laid.grid, scallop, book);
  return {
    grid: laid.grid,
    form,
    findings: [
      ...judgeGathers({ resolved, size, ...laid, form, asked, scallop }),
      ...judgeAustrian(resolved, form),
    ],
  };
}

/** Either how far it hangs is given, or the cloth across it. */
function askedScallop({ making: { gather } }: ResolvedShade, columns: readonly Column[]): Scallop {
  const spanMm = columnSpacingMm(columns);
  return gather.sagMm === undefined
    ? scallopOfArc(spanMm, spanMm + gather.scallopExtraMm)
    : scallopOfSag(spanMm, gather.sagMm);
}
