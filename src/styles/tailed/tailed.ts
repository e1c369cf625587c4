import type { Finding, WorkingBook } from "../../figures/index.ts";
import type { ResolvedShade } from "../../job/index.ts";
import type { Column, Ease, Form, Grid, Size } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { drapedShape } from "../draping/draped-shape.ts";
import { easeBetween } from "../draping/ease.ts";
import { finishGrid, gridOf, writeTravel } from "../draping/finish-grid.ts";
import { judgePleats } from "../draping/judge-pleats.ts";
import { judgeRows } from "../draping/judge-rows.ts";
import { layPleatedRows } from "../draping/pleated-rows.ts";
import { barBetween, layPleats, pleatAllowances, pleatMarks, pleatOpening } from "../draping/pleats.ts";
import { writeTail } from "../draping/tail.ts";
import { writePieces } from "../draping/write-pleats.ts";
import { plainStretches } from "../flat/flat-form.ts";
import type { LiftPartsHeight, Style } from "../style.ts";
import { pleatInset } from "./inset.ts";
import { judgeTailed } from "./judge-tailed.ts";
import { tailedSteps } from "./tailed-steps.ts";

/** The tailed shade: two columns in inverted pleats set in from the edges, whose cloth hangs down beside them. */
export const tailed: Style = {
  asks: [
    { group: "pleat", keys: ["insetMm", "insetShare", "foldedMm", "held", "cut", "bar", "centreLine"] },
    { group: "fold", keys: ["rows", "headrailMm", "largestSpacingMm"] },
  ],
  columns: pleatColumns,
  grid: tailedGrid,
  shape: drapedShape,
  steps: tailedSteps,
};

function pleatColumns(
  resolved: ResolvedShade,
  size: Size,
  book: WorkingBook,
): { columns: Column[]; findings: Finding[] } {
  const width = size.finishedWidthMm;
  const insetMm = pleatInset(resolved, width, book);
  const { centreLine } = resolved.making.pleat;
  book.figure("shape.column-spacing", {
    label: "Spacing of columns",
    symbol: "b",
    unit: "mm",
    formula: "(W − 2·e) / (n − 1)",
    given: {
      W: [width, "mm", "finished width"],
      e: [insetMm, "mm", "pleat in from each edge"],
      n: [centreLine ? 3 : 2, "count", "ring columns"],
    },
    cite: cite("geometry"),
    compute: ({ W, e, n }) => (W - 2 * e) / (n - 1),
  });
  const places = [insetMm, ...(centreLine ? [width / 2] : []), width - insetMm];
  return { columns: places.map((xMm, i) => ({ number: i + 1, xMm })), findings: [] };
}

function tailedGrid(
  resolved: ResolvedShade,
  size: Size,
  columns: Column[],
  liftParts: LiftPartsHeight,
  book: WorkingBook,
) {
  const laid = layPleatedRows(resolved, size, liftParts, resolved.making.pleat.firstRingMm, book);
  const travelMm = writeTravel(size.finishedLengthMm, laid, book);
  const bare = gridOf(size, columns, { ...laid, skirtMm: 0, travelMm });
  const form = tailedForm(resolved, size, bare);
  writePieces(resolved, size, form, book);
  const columnMm = columns[0]?.xMm ?? 0;
  writeTail(columnMm, columnMm + easeBetween(form, 0, columnMm, 0), travelMm, book);
  const grid = finishGrid(size, bare, form, book);
  return {
    grid,
    form,
    findings: [
      ...judgeRows(resolved, size, laid, grid),
      ...judgePleats(resolved, size, form),
      ...judgeTailed(resolved, size, grid, form),
    ],
  };
}

function tailedForm({ making }: ResolvedShade, size: Size, grid: Grid): Form {
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
    haberdashery: [],
  };
}

/** At the back of a pleat a join is out of sight; pieces cut apart meet at its lines. */
function joins({ pleat }: ResolvedShade["making"], pleats: Form["pleats"]): number[] {
  return pleat.cut === "inserts"
    ? pleats.flatMap(({ flatMm: [left, , right] }) => [left, right])
    : pleats.map(({ flatMm: [, middle] }) => middle);
}
