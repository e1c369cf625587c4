import type { Finding, WorkingBook } from "../account/index.ts";
import type { Brief } from "../job/index.ts";
import type { Column, Grid, Size } from "../shade/index.ts";

/** What sits under the board and takes up the cords: the folds gather below it. */
export interface Mechanism {
  /** Lowest part below the underside of the board, mm. */
  heightMm: number;
  /** What it is, in the working of the headrail allowance. */
  label: string;
}

/** What every style of shade answers. A new style is one folder with these. */
export interface Style {
  /** Columns come first: their number decides lock or drive, whose height decides the headrail allowance. */
  columns(brief: Brief, size: Size, book: WorkingBook): { columns: Column[]; findings: Finding[] };
  /** The whole ring grid and how the shade folds on it. */
  grid(
    brief: Brief,
    size: Size,
    columns: Column[],
    mechanism: Mechanism,
    book: WorkingBook,
  ): { grid: Grid; findings: Finding[] };
}
