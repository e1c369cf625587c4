import { figureRule, type StageResult, staged } from "../../../figures/index.ts";
import { type ReadOf, reads } from "../../../job/index.ts";
import type { Column } from "../../../shade-plan/index.ts";
import { cite } from "../../../sources/index.ts";
import { layColumns } from "../../base/columns.ts";
import { EVEN_ROWS_BY } from "../../base/even-rows.ts";
import { scallopWithin } from "../../base/scallop.ts";
import { REPORTED } from "../../base/style-shade.ts";
import { finishGrid, gridOf, type HangsBy, travelOf } from "../../draping/finish-grid.ts";
import { judgePleats } from "../../draping/judge-pleats.ts";
import { judgeRows } from "../../draping/judge-rows.ts";
import { pleatFigures } from "../../draping/pleat-figures.ts";
import { layPleatedRows } from "../../draping/pleated-rows.ts";
import { sagFigure } from "../../gathering/scallop-figures.ts";
import type { ColumnsInput, GridInput, LaidGrid, StyleOf } from "../../style.ts";
import { balloonForm, bayEase, laidPleats } from "./balloon-form.ts";
import { balloonSteps } from "./balloon-steps.ts";
import { judgeBalloon } from "./judge-balloon.ts";
import { lowestPouf, smaller } from "./pouf.ts";

const POUF_COLUMN_READS = reads({ shade: REPORTED, making: ["columns", "pleat"] });

const BALLOON_READS = reads({
  shade: [...REPORTED, "cloths"],
  making: ["pleat", "pouf", "fold", "hems", "ribs", "board"],
});

/** The pleated balloon: poufs between columns that stand in pleats, which open towards the hem. */
export const pleatedBalloon: StyleOf<typeof POUF_COLUMN_READS, typeof BALLOON_READS> = {
  reads: { columns: POUF_COLUMN_READS, grid: BALLOON_READS },
  asks: [
    { group: "pleat", keys: ["poufMm", "foldedMm", "kind", "held", "edges"] },
    { group: "pouf", keys: ["marks", "clothMm"] },
    { group: "columns", keys: ["count"] },
    { group: "fold", keys: ["rows", "headrailMm", "largestSpacingMm"] },
  ],
  columns: poufColumns,
  grid: balloonGrid,
  inLine: "the poufs of a balloon shade hang below its rows",
  steps: balloonSteps,
};

/** As many columns as keep every pouf within its width. */
function poufColumns({ shade, size }: ColumnsInput<ReadOf<typeof POUF_COLUMN_READS>>): StageResult<Column[]> {
  return layColumns({ shade, size }, { mm: shade.making.pleat.poufMm, setting: "pleat/poufMm" });
}

/** Cloth across the poufs, and what of it can sink between the columns. */
const POUF_BY = [
  "pleat/foldedMm",
  "pleat/edges",
  "pleat/held",
  "pleat/openAtHemMm",
  "pleat/sewnAtTopMm",
  "pleat/bar",
  "pouf/marks",
  "pouf/clothMm",
  "columns/count",
  "figure:shape.columns",
  "figure:shape.column-spacing",
  "figure:measure.finished-length",
] as const;

const BOTTOM = figureRule({
  id: "shape.bottom-section",
  label: "Lowest ring to the lowest point, shade down",
  symbol: "b",
  unit: "mm",
  formula: "max(k + D, (P + D) / 2, q)",
  inputs: {
    k: ["mm", "lowest ring to the hem", "pleat/firstRingMm", "figure:measure.finished-length"],
    D: ["mm", "middle of a pouf below its corners", ...POUF_BY],
    P: ["mm", "cloth that stays up in the pouf", "pouf/clothMm", "pouf/marks"],
    q: ["mm", "a fold of it at the columns", "pouf/clothMm", "pouf/marks"],
  },
  cite: cite("catenary"),
  compute: ({ k, D, P, q }) => Math.max(k + D, (P + D) / 2, q),
});

const HANGS_BY: HangsBy = {
  rows: [...EVEN_ROWS_BY, "figure:shape.bottom-section"],
  cloth: [...POUF_BY, "pleat/firstRingMm", "board/barShorterMm"],
};

function balloonGrid({
  shade,
  size,
  columns,
  headrailNeededMm,
}: GridInput<ReadOf<typeof BALLOON_READS>>): StageResult<LaidGrid> {
  const { making } = shade;
  const length = size.finishedLengthMm;
  const pleats = laidPleats(making.pleat, columns);
  const ease = bayEase(making.pleat, columns, length);
  const bays = ease.map(({ fromMm, toMm, extraMm }) => ({
    spanMm: toMm - fromMm,
    // A bar in the hem lets nothing hang between the columns.
    arcMm: toMm - fromMm + (making.pleat.bar === "none" ? extraMm : 0),
  }));
  const wanted = lowestPouf(making, bays, length);
  const sagMm = Math.max(0, ...wanted.sagsMm);
  const deepest = bays[wanted.sagsMm.indexOf(sagMm)];
  const sag =
    deepest === undefined || sagMm === 0
      ? []
      : [
          sagFigure(scallopWithin(deepest.spanMm, deepest.arcMm, wanted.clothMm), {
            label: "Middle of a pouf below its corners",
            hangsBy: POUF_BY,
          }),
        ];
  const bottom = BOTTOM.figure({
    k: wanted.firstRingMm,
    D: sagMm,
    P: wanted.clothMm,
    q: wanted.loops > 0 ? wanted.clothMm / (2 * wanted.loops) : 0,
  });
  const laid = layPleatedRows(making.fold, size, headrailNeededMm, {
    mm: bottom.value,
    by: ["figure:shape.bottom-section"],
  });
  const pouf = smaller(wanted, laid.values.share);
  const travel = travelOf(length, laid.values, HANGS_BY);
  const bare = gridOf(size, columns, { ...laid.values, skirtMm: 0, travelMm: travel.value });
  const form = balloonForm(making, size, bare, { pleats, ease, pouf });
  const { grid, raised } = finishGrid(size, bare, form, HANGS_BY);
  return staged(
    { grid, form },
    {
      findings: () => [
        ...judgeRows(shade, size, laid.values, grid),
        ...judgePleats(shade, size, form),
        ...judgeBalloon(shade, size, form),
      ],
      workings: () => [...sag, bottom, ...laid.workings, travel, ...pleatFigures(making, size, form), raised],
    },
  );
}
