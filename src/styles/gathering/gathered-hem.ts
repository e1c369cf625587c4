import type { WorkingBook } from "../../figures/index.ts";
import type { ResolvedShade } from "../../job/index.ts";
import { type Column, columnSpacingMm, type Size } from "../../shade-plan/index.ts";
import { type Cite, cite } from "../../sources/index.ts";
import type { LiftPartsHeight } from "../style.ts";
import { gatheredGrid } from "./gathered-grid.ts";
import { gatheredHemForm } from "./gathered-hem-form.ts";
import { judgeGathers } from "./judge-gathers.ts";
import { DEEPEST_SHARE, scallopOfArc, scallopWithin } from "./scallop.ts";
import { writeSag } from "./write-scallop.ts";

/** A lowest row higher than this share of the length leaves nothing to gather. */
const HIGHEST_HEM_ROW_SHARE = 1 / 12;

/**
 * A shade gathered across at its head, whose hem hangs in scallops as far as cloth is drawn up at the columns:
 * what was cut longer and stays drawn up, and whatever the cords lift.
 */
export function layGatheredHem(
  resolved: ResolvedShade,
  size: Size,
  columns: Column[],
  liftParts: LiftPartsHeight,
  book: WorkingBook,
  published: Cite,
) {
  const { gather } = resolved.making;
  const flatWidthMm = book.figure("shape.gathered-width", {
    label: "Cloth across, hemmed",
    symbol: "P",
    unit: "mm",
    formula: "W·f + i",
    given: {
      W: [size.finishedWidthMm, "mm", "finished width"],
      f: [gather.widthFullness, "ratio", "cloth for the width"],
      i: [gather.drawInMm, "mm", "for sides that draw in"],
    },
    cite: published,
    compute: ({ W, f, i }) => W * f + i,
  });
  const extraMm = gather.hemExtraMm;
  const spans = Math.max(1, columns.length - 1);
  const spanMm = columnSpacingMm(columns);
  const stripMm = columns[0]?.xMm ?? 0;
  const arcMm = book.figure("shape.scallop-cloth", {
    label: "Cloth across a scallop",
    symbol: "a",
    unit: "mm",
    formula: "(P − i − 2·e) / n",
    given: {
      P: [flatWidthMm, "mm", "cloth across, hemmed"],
      i: [gather.drawInMm, "mm", "for sides that draw in"],
      e: [stripMm, "mm", "edge column in from the edge"],
      n: [spans, "count", "scallops"],
    },
    cite: cite("balloon-2009", "(panel − 2 in) ÷ poufs, with rings 1 in from the edges"),
    compute: ({ P, i, e, n }) => (P - i - 2 * e) / n,
  });
  const full = scallopOfArc(spanMm, arcMm);
  const hemRowMm = Math.min(gather.hemRowMm, HIGHEST_HEM_ROW_SHARE * size.finishedLengthMm);
  const deepestMm = DEEPEST_SHARE * size.finishedLengthMm;
  const scallop = scallopWithin(spanMm, arcMm, Math.min(extraMm, deepestMm));
  writeSag(scallop, "A scallop hangs by, shade lowered", book);
  const laid = gatheredGrid(
    {
      ...{ resolved, size, columns, liftParts, hemRowMm },
      sagMm: scallop.sagMm,
      raisedSagMm: (travelMm) => Math.min(full.sagMm, scallop.sagMm + travelMm),
    },
    book,
  );
  const form = gatheredHemForm(
    resolved,
    size,
    laid.grid,
    { flatWidthMm, arcMm, sagMm: scallop.sagMm, hemRowMm },
    book,
  );
  return {
    grid: laid.grid,
    form,
    findings: judgeGathers({
      resolved,
      size,
      ...laid,
      form,
      asked: { ...full, sagMm: Math.min(full.sagMm, extraMm) },
      scallop,
    }),
  };
}
