import { figureRule, figureRuleOf, type StageResult, staged } from "../../figures/index.ts";
import { columnSpacingMm } from "../../shade-plan/index.ts";
import { type Cite, cite } from "../../sources/index.ts";
import { DEEPEST_SHARE, scallopOfArc, scallopWithin } from "../base/scallop.ts";
import { FINISHED_WIDTH } from "../base/size-inputs.ts";
import type { GridInput, LaidGrid } from "../style.ts";
import { gatheredGrid } from "./gathered-grid.ts";
import { gatheredHemForm } from "./gathered-hem-form.ts";
import { type GatheredShade, judgeGathers } from "./judge-gathers.ts";
import { sagFigure } from "./scallop-figures.ts";

/** A lowest row higher than this share of the length leaves nothing to gather. */
const HIGHEST_HEM_ROW_SHARE = 1 / 12;

/** What the scallops at the hem hang by. */
const HANGS_BY = [
  "gather/hemExtraMm",
  "gather/hemRowMm",
  "figure:shape.scallop-cloth",
  "figure:shape.column-spacing",
  "figure:measure.finished-length",
] as const;

const FLAT_WIDTH = figureRuleOf<{ published: Cite }>()({
  id: "shape.gathered-width",
  label: "Cloth across, hemmed",
  symbol: "P",
  unit: "mm",
  formula: "W·f + i",
  inputs: {
    W: FINISHED_WIDTH,
    f: ["ratio", "cloth for the width", "gather/widthFullness"],
    i: ["mm", "for sides that draw in", "gather/drawInMm"],
  },
  cite: ({ published }) => published,
  compute: ({ W, f, i }) => W * f + i,
});

const ARC = figureRule({
  id: "shape.scallop-cloth",
  label: "Cloth across a scallop",
  symbol: "a",
  unit: "mm",
  formula: "(P − i − 2·e) / n",
  inputs: {
    P: ["mm", "cloth across, hemmed", "figure:shape.gathered-width"],
    i: ["mm", "for sides that draw in", "gather/drawInMm"],
    e: ["mm", "edge column in from the edge", "columns/edgeInsetMm", "figure:measure.finished-width"],
    n: ["count", "scallops", "columns/count", "figure:shape.columns"],
  },
  cite: cite("balloon-2009", "(panel − 2 in) ÷ poufs, with rings 1 in from the edges"),
  compute: ({ P, i, e, n }) => (P - i - 2 * e) / n,
});

/**
 * A shade gathered across at its head, whose hem hangs in scallops as far as cloth is drawn up at the columns:
 * what was cut longer and stays drawn up, and whatever the cords lift. `published`: who says how wide the cloth is.
 */
export function layGatheredHem(
  { shade, size, columns, headrailNeededMm }: GridInput<GatheredShade>,
  published: Cite,
): StageResult<LaidGrid> {
  const { gather, fold } = shade.making;
  const { drawInMm: i, hemExtraMm: extraMm } = gather;
  const flatWidth = FLAT_WIDTH.figure({ W: size.finishedWidthMm, f: gather.widthFullness, i }, { published });
  const flatWidthMm = flatWidth.value;
  const spanMm = columnSpacingMm(columns);
  const arc = ARC.figure({
    P: flatWidthMm,
    i,
    e: columns[0]?.xMm ?? 0,
    n: Math.max(1, columns.length - 1),
  });
  const arcMm = arc.value;
  const full = scallopOfArc(spanMm, arcMm);
  const hemRowMm = Math.min(gather.hemRowMm, HIGHEST_HEM_ROW_SHARE * size.finishedLengthMm);
  const deepestMm = DEEPEST_SHARE * size.finishedLengthMm;
  const scallop = scallopWithin(spanMm, arcMm, Math.min(extraMm, deepestMm));
  const { sagMm } = scallop;
  const sag = sagFigure(scallop, { label: "A scallop hangs by, shade lowered", hangsBy: HANGS_BY });
  const laid = gatheredGrid({
    ...{ fold, size, columns, headrailNeededMm, hemRowMm, sagMm },
    raisedSagMm: (travelMm) => Math.min(full.sagMm, sagMm + travelMm),
    hangsBy: HANGS_BY,
  });
  const { grid } = laid.values;
  const form = gatheredHemForm(shade, size, grid, { flatWidthMm, arcMm, sagMm, hemRowMm });
  return staged(
    { grid, form: form.values },
    {
      findings: () =>
        judgeGathers({
          shade,
          size,
          ...laid.values,
          form: form.values,
          asked: { ...full, sagMm: Math.min(full.sagMm, extraMm) },
          scallop,
        }),
      workings: () => [flatWidth, arc, sag, ...laid.workings, ...form.workings],
    },
  );
}
