import type { Existing } from "../job/index.ts";

/** Rows and columns as they were measured, in their order, each once, those that lie on the shade. */
export interface MeasuredRings {
  rowsFromHemMm: number[];
  columnsMm: number[];
  /** Measures that lie beyond the shade. */
  outside: number;
}

/** A shade hangs on two cords at least: with fewer measured it is planned as its style has it. */
export const FEWEST_COLUMNS = 2;
/** Two measures nearer than this are one, taken twice. */
const TWICE_MM = 5;

export function measuredOf(
  { rowsFromHemMm, columnsFromLeftMm }: Existing,
  size: { finishedWidthMm: number; finishedLengthMm: number },
): MeasuredRings {
  const rows = inOrder(rowsFromHemMm);
  const columns = inOrder(columnsFromLeftMm);
  const onRows = rows.filter((mm) => mm < size.finishedLengthMm);
  const onColumns = columns.filter((mm) => mm <= size.finishedWidthMm);
  return {
    rowsFromHemMm: onRows,
    columnsMm: onColumns,
    outside: rows.length - onRows.length + columns.length - onColumns.length,
  };
}

function inOrder(measuresMm: readonly number[]): number[] {
  const sorted = [...measuresMm].sort((a, b) => a - b);
  return sorted.filter((mm, i) => i === 0 || mm - (sorted[i - 1] ?? 0) > TWICE_MM);
}

/** A row as it will hang: where it is, and whether its rings are sewn on for it. */
export interface HungRow {
  fromHemMm: number;
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
export function layMeasuredRows(rowsFromHemMm: readonly number[], ask: RowAsk): HungRow[] {
  const measured = ask.tasks.includes("even-rows")
    ? evenRows(rowsFromHemMm)
    : rowsFromHemMm.map((fromHemMm) => ({ fromHemMm, isNew: false }));
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

function evenRows(rowsFromHemMm: readonly number[]): HungRow[] {
  const lowest = rowsFromHemMm[0] ?? 0;
  const highest = rowsFromHemMm.at(-1) ?? lowest;
  const step = (highest - lowest) / Math.max(1, rowsFromHemMm.length - 1);
  return rowsFromHemMm.map((fromMm, i) => {
    const fromHemMm = lowest + i * step;
    const isNew = Math.abs(fromHemMm - fromMm) > MOVED_MM;
    return isNew ? { fromHemMm, isNew } : { fromHemMm: fromMm, isNew };
  });
}

/**
 * Every stretch that is too long, and that above the top row up to the headrail allowance, parted evenly: into the fewest
 * parts that keep the largest spacing, or into more where that brings them nearer to the smallest of the others.
 */
function withRowsBetween(
  rows: readonly HungRow[],
  { lengthMm, headrailMm, largestSpacingMm }: RowAsk,
): HungRow[] {
  const gapsMm = rows.map(
    ({ fromHemMm }, i) => (rows[i + 1]?.fromHemMm ?? Math.max(fromHemMm, lengthMm - headrailMm)) - fromHemMm,
  );
  const fewest = gapsMm.map((gapMm) => Math.max(1, Math.ceil(gapMm / largestSpacingMm - 1e-6)));
  const stepMm = Math.min(
    ...gapsMm.map((gapMm, i) => gapMm / (fewest[i] ?? 1)).filter((mm) => mm > SMALL_MM),
  );
  return rows.flatMap((row, i) => {
    const gapMm = gapsMm[i] ?? 0;
    const least = fewest[i] ?? 1;
    const off = (parts: number) => Math.abs(gapMm / parts - stepMm);
    const parts = least > 1 && off(least + 1) < off(least) ? least + 1 : least;
    const added = Array.from({ length: parts - 1 }, (_, k) => ({
      fromHemMm: row.fromHemMm + (gapMm * (k + 1)) / parts,
      isNew: true,
    }));
    return [row, ...added];
  });
}
