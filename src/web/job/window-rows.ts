import type { UnitChoice } from "../../units/index.ts";
import { readLength } from "../inputs/read-write.ts";
import { span } from "../inputs/spec.ts";

export const WINDOW_COLUMNS = ["Name", "Width", "Length"] as const;

/** One row as it was typed: a cell for each column. */
export type WindowCells = readonly [name: string, width: string, length: string];

export const EMPTY_ROW: WindowCells = ["", "", ""];
/** Rows of one go; more come with the next. */
export const MOST_NEW_WINDOWS = 100;

export interface NewSize {
  name: string;
  widthMm: number;
  heightMm: number;
}

interface CellTrouble {
  row: number;
  column: number;
  reason: string;
}

const SIDES = [undefined, span("Width"), span("Length")] as const;

export function isEmptyRow(cells: WindowCells): boolean {
  return cells.every((cell) => cell.trim() === "");
}

/** Sizes of the rows that hold something, or every cell that cannot be read. */
export function readWindowRows(
  rows: readonly WindowCells[],
  units: UnitChoice,
): { sizes: NewSize[]; troubles: CellTrouble[] } {
  const sizes: NewSize[] = [];
  const troubles: CellTrouble[] = [];
  rows.forEach((cells, row) => {
    if (isEmptyRow(cells)) return;
    const read = (column: 1 | 2): number => {
      const side = readLength(cells[column], SIDES[column], units);
      if (side.ok) return side.value;
      troubles.push({ row, column, reason: side.reason });
      return Number.NaN;
    };
    const name = cells[0]
      .replace(/\p{Cc}/gu, " ")
      .trim()
      .slice(0, 120);
    sizes.push({ name, widthMm: read(1), heightMm: read(2) });
  });
  return { sizes, troubles };
}

/** The rows with cells laid over them from one on; rows are added where they are short. */
export function withCells(
  rows: readonly WindowCells[],
  cells: readonly (readonly string[])[],
  at: { row: number; column: number },
): WindowCells[] {
  const next: WindowCells[] = [...rows];
  cells.forEach((line, i) => {
    const row = at.row + i;
    if (row >= MOST_NEW_WINDOWS) return;
    const mixed = [...(next[row] ?? EMPTY_ROW)];
    line.forEach((cell, j) => {
      if (at.column + j < mixed.length) mixed[at.column + j] = cell;
    });
    while (next.length < row) next.push(EMPTY_ROW);
    next[row] = mixed as unknown as WindowCells;
  });
  return next;
}
