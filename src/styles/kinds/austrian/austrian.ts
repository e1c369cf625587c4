import { type StageResult, staged } from "../../../figures/index.ts";
import type { ResolvedMaking } from "../../../job/index.ts";
import { type Column, columnSpacingMm } from "../../../shade-plan/index.ts";
import { COLUMN_READS, layColumns } from "../../base/columns.ts";
import { DEEPEST_SHARE, type Scallop, scallopOfArc, scallopOfSag } from "../../base/scallop.ts";
import { gatheredGrid } from "../../gathering/gathered-grid.ts";
import { GATHERED_READS } from "../../gathering/gathered-reads.ts";
import { type GatheredShade, judgeGathers } from "../../gathering/judge-gathers.ts";
import { arcFigures, sagFigure } from "../../gathering/scallop-figures.ts";
import type { GridInput, LaidGrid, StyleOf } from "../../style.ts";
import { austrianForm, SCALLOP_BY } from "./austrian-form.ts";
import { austrianSteps } from "./austrian-steps.ts";
import { judgeAustrian } from "./judge-austrian.ts";

/**
 * The Austrian shade: cloth shirred onto tapes along its whole length, swag over swag, lowered as well as raised.
 * In the United Kingdom it is a festoon, and “Austrian” there is our gathered festoon.
 */
export const austrian: StyleOf<typeof COLUMN_READS, typeof GATHERED_READS> = {
  reads: { columns: COLUMN_READS, grid: GATHERED_READS },
  asks: [
    {
      group: "gather",
      keys: [
        "lengthFullness",
        "scallopExtraMm",
        "sagMm",
        "weight",
        "drawInMm",
        "frillMm",
        "frillEdges",
        "frillDouble",
      ],
    },
    { group: "columns", keys: ["count", "largestSpacingMm"] },
    { group: "fold", keys: ["rows", "largestSpacingMm", "headrailMm"] },
  ],
  columns: layColumns,
  grid: layAustrian,
  inLine: "the scallops of an Austrian shade are set by its gathers",
  steps: austrianSteps,
};

function layAustrian({
  shade,
  size,
  columns,
  headrailNeededMm,
}: GridInput<GatheredShade>): StageResult<LaidGrid> {
  const { gather, fold } = shade.making;
  const asked = askedScallop(gather, columns);
  const deepestMm = DEEPEST_SHARE * size.finishedLengthMm;
  const scallop = asked.sagMm > deepestMm ? scallopOfSag(asked.spanMm, deepestMm) : asked;
  const sag = sagFigure(scallop, { label: "A scallop hangs by", hangsBy: SCALLOP_BY });
  const { sagMm } = scallop;
  const laid = gatheredGrid({
    ...{ fold, size, columns, headrailNeededMm, hemRowMm: 0, sagMm },
    raisedSagMm: () => sagMm,
    hangsBy: SCALLOP_BY,
  });
  const { grid } = laid.values;
  const form = austrianForm(shade, size, grid, scallop);
  return staged(
    { grid, form: form.values },
    {
      findings: () => [
        ...judgeGathers({ shade, size, ...laid.values, form: form.values, asked, scallop }),
        ...judgeAustrian(shade, form.values),
      ],
      workings: () => [
        sag,
        ...(gather.sagMm === undefined ? [] : arcFigures(scallop, SCALLOP_BY)),
        ...laid.workings,
        ...form.workings,
      ],
    },
  );
}

/** Either how far it hangs is given, or the cloth across it. */
function askedScallop(
  gather: Pick<ResolvedMaking["gather"], "sagMm" | "scallopExtraMm">,
  columns: readonly Column[],
): Scallop {
  const spanMm = columnSpacingMm(columns);
  return gather.sagMm === undefined
    ? scallopOfArc(spanMm, spanMm + gather.scallopExtraMm)
    : scallopOfSag(spanMm, gather.sagMm);
}
