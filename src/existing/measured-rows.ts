import type { Existing } from "../job/index.ts";

/** A row above the hem at both edges seen from the room, mm: as high at one as at the other where it is level. */
export interface MeasuredRow {
  leftMm: number;
  rightMm: number;
}

/** Rows and columns as they were measured, in their order, each once, those that lie on the shade. */
export interface MeasuredRings {
  rows: MeasuredRow[];
  columnsMm: number[];
  /** Measures that lie beyond the shade. */
  outside: number;
  /** Rows of which one edge alone was measured, where the other was measured of some: they are taken as level. */
  oneSided: number;
}

/** A shade hangs on two cords at least: with fewer measured it is planned as its style has it. */
export const FEWEST_COLUMNS = 2;
/** Two measures nearer than this are one, taken twice. */
const TWICE_MM = 5;

export function measuredOf(
  { rowsFromHemMm, rowsFromHemRightMm, columnsFromLeftMm, hemFallMm = 0, hemLow = "right" }: Existing,
  size: { finishedWidthMm: number; finishedLengthMm: number },
): MeasuredRings {
  const rows = pairsOf(rowsFromHemMm, rowsFromHemRightMm ?? rowsFromHemMm);
  const columns = inOrder(columnsFromLeftMm);
  const lengthMm = (edge: "left" | "right") =>
    size.finishedLengthMm - (hemLow === edge ? 0 : Math.min(hemFallMm, size.finishedLengthMm));
  const onRows = rows.filter(
    ({ leftMm, rightMm }) => leftMm < lengthMm("left") && rightMm < lengthMm("right"),
  );
  const onColumns = columns.filter((mm) => mm <= size.finishedWidthMm);
  return {
    rows: onRows,
    columnsMm: onColumns,
    outside: rows.length - onRows.length + columns.length - onColumns.length,
    oneSided:
      rowsFromHemRightMm === undefined ? 0 : Math.abs(rowsFromHemMm.length - rowsFromHemRightMm.length),
  };
}

/** The lowest at one edge with the lowest at the other; what has no other end is level. */
function pairsOf(left: readonly number[], right: readonly number[]): MeasuredRow[] {
  const rising = (mm: readonly number[]) => [...mm].sort((a, b) => a - b);
  const [lefts, rights] = [rising(left), rising(right)];
  const pairs = Array.from({ length: Math.max(lefts.length, rights.length) }, (_, i): MeasuredRow => {
    const leftMm = lefts[i] ?? rights[i] ?? 0;
    return { leftMm, rightMm: rights[i] ?? leftMm };
  });
  const near = (a: number, b: number) => a - b <= TWICE_MM;
  return pairs.filter(({ leftMm, rightMm }, i) => {
    const below = pairs[i - 1];
    return below === undefined || !near(leftMm, below.leftMm) || !near(rightMm, below.rightMm);
  });
}

function inOrder(measuresMm: readonly number[]): number[] {
  const sorted = [...measuresMm].sort((a, b) => a - b);
  return sorted.filter((mm, i) => i === 0 || mm - (sorted[i - 1] ?? 0) > TWICE_MM);
}

/** A row as it will hang: where it is, and whether its rings are sewn on for it. */
export interface HungRow extends MeasuredRow {
  isNew: boolean;
}

/** What the rows are laid to. */
export interface RowAsk {
  tasks: Existing["tasks"];
  lengthMm: number;
  /** Flat cloth that stays above the gathered rings. */
  headrailMm: number;
  /** Rows farther apart than this are parted where rows are to be added. */
  largestSpacingMm: number;
}

/** Rows nearer than this set no measure for the others. */
const SMALL_MM = 75;
/** A ring that is moved by less than this stays where it is. */
const MOVED_MM = 2;

/** The measured rows with what is to be done to them: made even between the lowest and the top one, and others put between. */
export function layMeasuredRows(rows: readonly MeasuredRow[], ask: RowAsk): HungRow[] {
  const measured = ask.tasks.includes("even-rows")
    ? evenRows(rows)
    : rows.map((row) => ({ ...row, isNew: false }));
  return addsRows(ask.tasks) ? withRowsBetween(measured, ask) : measured;
}

/** A column as it will hang. */
interface HungColumn {
  xMm: number;
  isNew: boolean;
}

/**
 * The measured columns, and where columns are to be added others between: in a bay that is too wide, or so much wider than
 * the narrowest that a column in it makes them alike.
 */
export function layMeasuredColumns(
  columnsMm: readonly number[],
  { tasks, largestSpacingMm }: Pick<RowAsk, "tasks" | "largestSpacingMm">,
): HungColumn[] {
  const measured = columnsMm.map((xMm) => ({ xMm, isNew: false }));
  if (!tasks.includes("add-columns")) return measured;
  const baysMm = columnsMm.slice(1).map((xMm, i) => xMm - (columnsMm[i] ?? 0));
  const narrowest = Math.min(...baysMm.filter((mm) => mm > SMALL_MM));
  return measured.flatMap((column, i) => {
    const bayMm = baysMm[i] ?? 0;
    const most = Math.max(1, Math.floor(bayMm / SMALL_MM));
    const alike = Number.isFinite(narrowest) ? Math.round(bayMm / narrowest) : 1;
    const parts = Math.min(most, Math.max(1, alike, Math.ceil(bayMm / largestSpacingMm - 1e-6)));
    const added = Array.from({ length: parts - 1 }, (_, k) => ({
      xMm: column.xMm + (bayMm * (k + 1)) / parts,
      isNew: true,
    }));
    return [column, ...added];
  });
}

export function addsRows(tasks: Existing["tasks"]): boolean {
  return tasks.includes("add-rows") || tasks.includes("make-safer");
}

/** Evenly between the lowest and the top row, each as far above the hem at one edge as at the other. */
function evenRows(rows: readonly MeasuredRow[]): HungRow[] {
  const middle = (row: MeasuredRow | undefined) => ((row?.leftMm ?? 0) + (row?.rightMm ?? 0)) / 2;
  const lowest = middle(rows[0]);
  const step = (middle(rows.at(-1)) - lowest) / Math.max(1, rows.length - 1);
  return rows.map((row, i) => {
    const mm = lowest + i * step;
    const isNew = Math.max(Math.abs(mm - row.leftMm), Math.abs(mm - row.rightMm)) > MOVED_MM;
    return isNew ? { leftMm: mm, rightMm: mm, isNew } : { ...row, isNew };
  });
}

/**
 * Every stretch that is too long, and that above the top row up to the headrail allowance, parted evenly: into the fewest
 * parts that keep the largest spacing, or into more where that brings them nearer to the smallest of the others. Where
 * rows slant, the end at which they are further apart decides.
 */
function withRowsBetween(
  rows: readonly HungRow[],
  { lengthMm, headrailMm, largestSpacingMm }: RowAsk,
): HungRow[] {
  const gaps = rows.map(({ leftMm, rightMm }, i): MeasuredRow => {
    const above = rows[i + 1];
    if (above !== undefined) return { leftMm: above.leftMm - leftMm, rightMm: above.rightMm - rightMm };
    // Rows added above the top one lie along it.
    const left = Math.max(0, lengthMm - headrailMm - Math.max(leftMm, rightMm));
    return { leftMm: left, rightMm: left };
  });
  const gapsMm = gaps.map(({ leftMm, rightMm }) => Math.max(leftMm, rightMm));
  const fewest = gapsMm.map((gapMm) => Math.max(1, Math.ceil(gapMm / largestSpacingMm - 1e-6)));
  const stepMm = Math.min(
    ...gapsMm.map((gapMm, i) => gapMm / (fewest[i] ?? 1)).filter((mm) => mm > SMALL_MM),
  );
  return rows.flatMap((row, i) => {
    const gap = gaps[i] ?? { leftMm: 0, rightMm: 0 };
    const gapMm = gapsMm[i] ?? 0;
    const least = fewest[i] ?? 1;
    const off = (parts: number) => Math.abs(gapMm / parts - stepMm);
    const parts = least > 1 && off(least + 1) < off(least) ? least + 1 : least;
    const added = Array.from({ length: parts - 1 }, (_, k) => ({
      leftMm: row.leftMm + (gap.leftMm * (k + 1)) / parts,
      rightMm: row.rightMm + (gap.rightMm * (k + 1)) / parts,
      isNew: true,
    }));
    return [row, ...added];
  });
}
