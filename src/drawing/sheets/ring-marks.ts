import type { Marker } from "../model.ts";

const RING_MM = 2.3;
/** More rings than this on one sheet run into a grey field that nobody can read. */
export const MOST_RINGS = 2500;

interface Line {
  number: number;
  mm: number;
}

/**
 * A ring at every crossing of a row and a column; of more rings than can be read, those of every so-manieth row and
 * column and of the last.
 */
export function ringMarks(rows: readonly Line[], columns: readonly Line[]): Marker[] {
  const [drawnRows, drawnColumns] = thinned(rows, columns);
  return drawnRows.flatMap((row) =>
    drawnColumns.map(
      (column): Marker => ({
        kind: "marker",
        role: "ring",
        shape: "ring",
        at: [column.mm, row.mm],
        paperMm: RING_MM,
        part: `ring-${row.number}-${column.number}`,
      }),
    ),
  );
}

/** What a caption adds where not every ring is drawn. */
export function ringWords(rows: readonly unknown[], columns: readonly unknown[]): string {
  return rows.length * columns.length > MOST_RINGS
    ? " So many rings could not be told apart: some rows and columns are drawn for all."
    : "";
}

function thinned(rows: readonly Line[], columns: readonly Line[]): [readonly Line[], readonly Line[]] {
  let [ofRows, ofColumns] = [rows, columns];
  for (let step = 2; ofRows.length * ofColumns.length > MOST_RINGS; step++) {
    if (rows.length > columns.length) ofRows = everyNth(rows, step);
    else ofColumns = everyNth(columns, step);
  }
  return [ofRows, ofColumns];
}

function everyNth(lines: readonly Line[], step: number): readonly Line[] {
  return lines.filter((_line, i) => i % step === 0 || i === lines.length - 1);
}
