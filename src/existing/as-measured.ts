import { type Figure, figureRule, type StageResult } from "../figures/index.ts";
import type { Existing } from "../job/index.ts";
import {
  type Column,
  columnSpacingMm,
  type Form,
  type Grid,
  type Row,
  type Size,
  type Stretch,
  slantMm,
} from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";
import { SAME_LENGTH_MM } from "../units/index.ts";
import type { ExistingShade } from "./existing-reads.ts";
import {
  FEWEST_COLUMNS,
  type HungRow,
  layMeasuredColumns,
  layMeasuredRows,
  measuredOf,
} from "./measured-rows.ts";

const MEASURED = cite("maker", "measured on the shade that hangs");
const BY = "shade/existing";

const COLUMNS = figureRule({
  id: "shape.columns",
  label: "Columns of rings, as measured and added",
  symbol: "n",
  unit: "count",
  formula: "n",
  inputs: { n: ["count", "columns measured, and those added", BY, "columns/largestSpacingMm"] },
  cite: MEASURED,
  compute: ({ n }) => n,
});

const COLUMN_SPACING = figureRule({
  id: "shape.column-spacing",
  label: "Columns apart, on the mean",
  symbol: "b",
  unit: "mm",
  formula: "(x − a) / max(1, n − 1)",
  inputs: {
    x: ["mm", "last column, from the left edge", BY],
    a: ["mm", "first column, from the left edge", BY],
    n: ["count", "columns", "figure:shape.columns"],
  },
  cite: MEASURED,
  compute: ({ x, a, n }) => (x - a) / Math.max(1, n - 1),
});

const HEADRAIL = figureRule({
  id: "shape.headrail",
  label: "Flat cloth above the gathered rings",
  symbol: "T",
  unit: "mm",
  formula: "min(H, S)",
  inputs: {
    H: ["mm", "headrail allowance", "fold/headrailMm", "figure:shape.headrail-needed"],
    S: ["mm", "top row to the top line", BY, "figure:measure.finished-length"],
  },
  cite: cite("geometry", "no ring rises above the top row’s own cloth"),
  compute: ({ H, S }) => Math.min(H, S),
});

const RAISED = figureRule({
  id: "shape.raised-height",
  label: "Raised height, top line to hem",
  symbol: "R",
  unit: "mm",
  formula: "T + d + e",
  inputs: {
    T: ["mm", "flat cloth above the gathered rings", "figure:shape.headrail"],
    d: ["mm", "hem to the bottom row, where it lies highest", BY],
    e: ["mm", "what its style hangs lower", "shade/style"],
  },
  cite: cite("geometry"),
  compute: ({ T, d, e }) => T + d + e,
});

const TRAVEL = figureRule({
  id: "shape.travel",
  label: "Travel of the bottom row",
  symbol: "r",
  unit: "mm",
  formula: "max(0, L − d − T − g)",
  inputs: {
    L: ["mm", "finished length", "figure:measure.finished-length"],
    d: ["mm", "hem to the bottom row, where it lies highest", BY],
    T: ["mm", "flat cloth above the gathered rings", "figure:shape.headrail"],
    g: ["mm", "what its style keeps of it", "shade/style"],
  },
  cite: cite("geometry"),
  compute: ({ L, d, T, g }) => Math.max(0, L - d - T - g),
});

interface ColumnsAsked {
  shade: ExistingShade;
  size: Size;
  /** As its style would lay them. */
  planned: StageResult<Column[]>;
}

/** Columns where they were measured, for a shade that hangs already; any other as its style lays them. */
export function columnsAsMeasured({ shade, size, planned }: ColumnsAsked): StageResult<Column[]> {
  if (shade.existing === undefined) return planned;
  const hung = columnsOfExisting({ shade, size });
  if (hung.length < FEWEST_COLUMNS) return planned;
  const columns = hung.map(({ xMm }, i) => ({ number: i + 1, xMm }));
  const first = columns[0]?.xMm ?? 0;
  const count = COLUMNS.figure({ n: columns.length });
  const spacing = COLUMN_SPACING.figure({ x: columns.at(-1)?.xMm ?? first, a: first, n: columns.length });
  return { values: columns, findings: [], workings: [count, spacing] };
}

interface GridAsked {
  shade: ExistingShade;
  size: Size;
  /** As its style would lay it, on the measured columns. */
  planned: StageResult<{ grid: Grid; form: Form }>;
}

/** Rows where they were measured or are to be, and how the shade folds on them; any other shade as its style lays it. */
export function gridAsMeasured({ shade, size, planned }: GridAsked): StageResult<{ grid: Grid; form: Form }> {
  const { grid: usual, form } = planned.values;
  const hung = rowsOfExisting({ shade, size, grid: usual });
  if (shade.existing === undefined || hung.length === 0) return planned;
  const lengthMm = size.finishedLengthMm;
  const hemFallMm = hemFallOf(shade.existing, lengthMm);
  const rows = hung.map((row, i) => asRow(row, i + 1, lengthMm, hemFallMm));
  const [lowest] = rows;
  const topSectionMm = rows.at(-1)?.yMm ?? lengthMm;
  const bottomMm = lowest?.fromHemMm ?? 0;
  // Its higher end is up first.
  const highestMm = bottomMm + (lowest === undefined ? 0 : slantMm(lowest));
  const headrail = HEADRAIL.figure({ H: usual.headrailMm, S: topSectionMm });
  const T = headrail.value;
  const lower = usual.raisedHeightMm - usual.headrailMm - usual.bottomSectionMm;
  const kept = lengthMm - usual.bottomSectionMm - usual.headrailMm - usual.travelMm;
  const raised = RAISED.figure({ T, d: highestMm, e: lower });
  const travel = TRAVEL.figure({ L: lengthMm, d: highestMm, T, g: kept });
  const grid: Grid = {
    rows,
    columns: usual.columns,
    ...(hemFallMm === 0 ? {} : { hemFallMm }),
    bottomSectionMm: bottomMm,
    spacingsMm: rows.slice(1).map(({ fromHemMm }, i) => fromHemMm - (rows[i]?.fromHemMm ?? 0)),
    topSectionMm,
    columnSpacingMm: columnSpacingMm(usual.columns),
    headrailMm: T,
    skirtMm: usual.skirtMm,
    raisedHeightMm: raised.value,
    travelMm: travel.value,
    coveredWhenRaisedMm: Math.max(0, raised.value - (size.openingTopMm ?? 0)),
  };
  return {
    values: { grid, form: formOn(rows, form, lengthMm) },
    findings: [],
    workings: [headrail, raised, travel] satisfies Figure[],
  };
}

/** Columns as they will hang: empty for a shade that does not hang yet. */
export function columnsOfExisting({
  shade,
  size,
}: Pick<ColumnsAsked, "shade" | "size">): ReturnType<typeof layMeasuredColumns> {
  const { existing, making } = shade;
  if (existing === undefined) return [];
  return layMeasuredColumns(measuredOf(existing, size).columnsMm, {
    tasks: existing.tasks,
    largestSpacingMm: making.columns.largestSpacingMm,
  });
}

/** Rows as they will hang: empty for a shade that does not hang yet, and where none of its measures lies on it. */
export function rowsOfExisting({
  shade,
  size,
  grid,
}: {
  shade: ExistingShade;
  size: Size;
  grid: Pick<Grid, "headrailMm">;
}): HungRow[] {
  const { existing, making } = shade;
  if (existing === undefined) return [];
  return layMeasuredRows(measuredOf(existing, size).rows, {
    tasks: existing.tasks,
    lengthMm: size.finishedLengthMm,
    headrailMm: grid.headrailMm,
    largestSpacingMm: making.fold.largestSpacingMm,
  });
}

/** How much lower the right end of the hem hangs than the left, mm. */
function hemFallOf({ hemFallMm = 0, hemLow }: Existing, lengthMm: number): number {
  const mm = Math.min(hemFallMm, lengthMm);
  return hemLow === "left" ? -mm : mm;
}

/** A measured row over its hem: its ends where they, or those of the hem, do not lie as high as each other. */
function asRow({ leftMm, rightMm }: HungRow, number: number, lengthMm: number, hemFallMm: number): Row {
  // The length is measured to the low end of the hem.
  const hemYMm = (half: number) => lengthMm - Math.abs(hemFallMm) / 2 + half * hemFallMm;
  const [leftYMm, rightYMm] = [hemYMm(-0.5) - leftMm, hemYMm(0.5) - rightMm];
  const yMm = (leftYMm + rightYMm) / 2;
  const fallMm = rightYMm - leftYMm;
  const row = { number, fromHemMm: lengthMm - yMm, yMm };
  if (Math.abs(fallMm) < SAME_LENGTH_MM && hemFallMm === 0) return row;
  return { ...row, ends: { leftFromHemMm: leftMm, rightFromHemMm: rightMm, fallMm } };
}

/** The same cloth over other rows: every stretch gets what its style lays there; ribs lie at every row or at none. */
function formOn(rows: readonly Row[], form: Form, lengthMm: number): Form {
  const hasRibs = form.ribs.rows.length > 0;
  const all = rows.map((_, i) => i + 1);
  const { between, ...ribs } = form.ribs;
  return {
    ...form,
    stretches: stretchesOn(
      rows.map(({ fromHemMm }) => fromHemMm),
      form.stretches,
      lengthMm,
    ),
    marks: form.marks.filter(({ kind }) => kind !== "row" && kind !== "rib"),
    ribs: {
      ...ribs,
      rows: hasRibs ? all : [],
      ...(between === undefined ? {} : { between: between.length > 0 ? all : [] }),
    },
  };
}

/** Cloth counted up from the hem along the cord is laid out anew, so that no cloth is lost and none comes. */
function stretchesOn(rowsMm: readonly number[], stretches: readonly Stretch[], lengthMm: number): Stretch[] {
  const at = countUp(stretches);
  const marks = [0, ...rowsMm, lengthMm];
  return marks.slice(1).map((to, row) => {
    const from = marks[row] ?? 0;
    const below = at(from);
    const above = at(to);
    const sewnMm = above.sewnMm - below.sewnMm;
    return {
      row,
      cordMm: to - from,
      clothMm: Math.max(to - from, above.clothMm - below.clothMm),
      ...(sewnMm > 0 ? { sewnMm } : {}),
    };
  });
}

interface CountedUp {
  clothMm: number;
  sewnMm: number;
}

function countUp(stretches: readonly Stretch[]): (fromHemMm: number) => CountedUp {
  return (fromHemMm) => {
    let startMm = 0;
    const sum = { clothMm: 0, sewnMm: 0 };
    for (const { cordMm, clothMm, sewnMm = 0 } of stretches) {
      const share = cordMm > 0 ? Math.min(1, Math.max(0, (fromHemMm - startMm) / cordMm)) : 0;
      sum.clothMm += share * clothMm;
      sum.sewnMm += share * sewnMm;
      startMm += cordMm;
    }
    return sum;
  };
}
