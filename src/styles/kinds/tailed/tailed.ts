import { type StageResult, staged } from "../../../figures/index.ts";
import { type ReadOf, type ResolvedMaking, reads } from "../../../job/index.ts";
import type { Column, Ease, Form, Grid, Size } from "../../../shade-plan/index.ts";
import { COLUMN_SPACING, type ColumnPlaces } from "../../base/columns.ts";
import { EVEN_ROWS_BY } from "../../base/even-rows.ts";
import { plainStretches } from "../../base/plain-form.ts";
import { REPORTED } from "../../base/style-shade.ts";
import { easeBetween } from "../../draping/ease.ts";
import { finishGrid, gridOf, type HangsBy, travelOf } from "../../draping/finish-grid.ts";
import { cutApart } from "../../draping/insert-pieces.ts";
import { judgePleats } from "../../draping/judge-pleats.ts";
import { judgeRows } from "../../draping/judge-rows.ts";
import { pleatFigures } from "../../draping/pleat-figures.ts";
import { layPleatedRows } from "../../draping/pleated-rows.ts";
import { barBetween, layPleats, pleatAllowances, pleatMarks, pleatOpening } from "../../draping/pleats.ts";
import { tailFigure } from "../../draping/tail.ts";
import type { ColumnsInput, GridInput, LaidGrid, StyleOf } from "../../style.ts";
import { pleatInset } from "./inset.ts";
import { judgeTailed } from "./judge-tailed.ts";
import { tailedSteps } from "./tailed-steps.ts";

const PLEAT_COLUMN_READS = reads({ making: ["pleat"] });

const TAILED_READS = reads({
  shade: [...REPORTED, "cloths"],
  making: ["pleat", "fold", "hems", "ribs", "board"],
});

/** The tailed shade: two columns in inverted pleats set in from the edges, whose cloth hangs down beside them. */
export const tailed: StyleOf<typeof PLEAT_COLUMN_READS, typeof TAILED_READS> = {
  reads: { columns: PLEAT_COLUMN_READS, grid: TAILED_READS },
  asks: [
    { group: "pleat", keys: ["insetMm", "insetShare", "foldedMm", "held", "cut", "bar", "centreLine"] },
    { group: "fold", keys: ["rows", "headrailMm", "largestSpacingMm"] },
  ],
  columns: pleatColumns,
  grid: tailedGrid,
  inLine: "the folds of a tailed shade hang down at its sides",
  steps: tailedSteps,
};

const IN_PLEATS: ColumnPlaces = {
  inset: "pleat in from each edge",
  insetBy: ["pleat/insetMm", "figure:shape.pleat-inset"],
  countBy: ["pleat/centreLine"],
};

function pleatColumns({
  shade,
  size,
}: ColumnsInput<ReadOf<typeof PLEAT_COLUMN_READS>>): StageResult<Column[]> {
  const width = size.finishedWidthMm;
  const { pleat } = shade.making;
  const { insetMm, workings } = pleatInset(pleat, width);
  const places = [insetMm, ...(pleat.centreLine ? [width / 2] : []), width - insetMm];
  const spacing = COLUMN_SPACING.figure({ W: width, e: insetMm, n: places.length }, IN_PLEATS);
  return {
    values: places.map((xMm, i) => ({ number: i + 1, xMm })),
    findings: [],
    workings: [...workings, spacing],
  };
}

/** The first rings sit so far above the hem. */
const BOTTOM_BY = ["pleat/firstRingMm"] as const;
const HANGS_BY: HangsBy = {
  rows: [...EVEN_ROWS_BY, ...BOTTOM_BY],
  cloth: [
    "pleat/foldedMm",
    "pleat/held",
    "pleat/openAtHemMm",
    "pleat/sewnAtTopMm",
    "pleat/bar",
    "board/barShorterMm",
    "figure:shape.column-spacing",
    "figure:measure.finished-width",
  ],
};

function tailedGrid({
  shade,
  size,
  columns,
  headrailNeededMm,
}: GridInput<ReadOf<typeof TAILED_READS>>): StageResult<LaidGrid> {
  const { making } = shade;
  const bottom = { mm: making.pleat.firstRingMm, by: BOTTOM_BY };
  const laid = layPleatedRows(making.fold, size, headrailNeededMm, bottom);
  const travel = travelOf(size.finishedLengthMm, laid.values, HANGS_BY);
  const travelMm = travel.value;
  const bare = gridOf(size, columns, { ...laid.values, skirtMm: 0, travelMm });
  const form = tailedForm(making, size, bare);
  const columnMm = columns[0]?.xMm ?? 0;
  const tail = tailFigure(columnMm, columnMm + easeBetween(form, 0, columnMm, 0), travelMm);
  const { grid, raised } = finishGrid(size, bare, form, HANGS_BY);
  return staged(
    { grid, form },
    {
      findings: () => [
        ...judgeRows(shade, size, laid.values, grid),
        ...judgePleats(shade, size, form),
        ...judgeTailed(shade, size, grid, form),
      ],
      workings: () => [...laid.workings, travel, ...pleatFigures(making, size, form), tail, raised],
    },
  );
}

function tailedForm(making: Pick<ResolvedMaking, "pleat" | "hems" | "board">, size: Size, grid: Grid): Form {
  const width = size.finishedWidthMm;
  const { foldedMm, kind } = making.pleat;
  const first = grid.columns[0]?.xMm ?? 0;
  const last = grid.columns.at(-1)?.xMm ?? width;
  const pleats =
    foldedMm > 0
      ? layPleats(
          [first, last].map((xMm) => ({ xMm, foldedMm })),
          kind,
        )
      : [];
  const { sideMm, untilMm } = pleatOpening(making, foldedMm, size.finishedLengthMm);
  const bays = grid.columns.slice(1).map(({ xMm: toMm }, i, all): Ease => {
    const fromMm = grid.columns[i]?.xMm ?? 0;
    return { fromMm, toMm, extraMm: all.length === 1 ? 2 * sideMm : sideMm, untilMm };
  });
  return {
    stretches: plainStretches(grid),
    allowances: pleatAllowances(pleats, making),
    across: "pleated",
    pleats,
    swags: [],
    ease: [
      { fromMm: 0, toMm: first, extraMm: sideMm, untilMm },
      ...bays,
      { fromMm: last, toMm: width, extraMm: sideMm, untilMm },
    ],
    ...barBetween(making, first, last),
    ribs: { rows: [], face: "back" },
    marks: pleatMarks(pleats),
    joinsAtMm: joins(making, pleats),
    ...cutApart(making, size, pleats),
    haberdashery: [],
  };
}

/** At the back of a pleat a join is out of sight; pieces cut apart meet at its lines. */
function joins({ pleat }: Pick<ResolvedMaking, "pleat">, pleats: Form["pleats"]): number[] {
  return pleat.cut === "inserts"
    ? pleats.flatMap(({ flatMm: [left, , right] }) => [left, right])
    : pleats.map(({ flatMm: [, middle] }) => middle);
}
