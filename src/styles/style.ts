import type { Finding, WorkingBook } from "../account/index.ts";
import type { Brief, CordLock } from "../job/index.ts";
import type { Column, Grid, Size } from "../shade/index.ts";

/** What every style of shade answers. A new style is one folder with these. */
export interface Style {
  /** Columns come first: their number decides the lock, and the lock's height the headrail allowance. */
  columns(brief: Brief, size: Size, book: WorkingBook): { columns: Column[]; findings: Finding[] };
  /** The whole ring grid and how the shade folds on it. */
  grid(
    brief: Brief,
    size: Size,
    columns: Column[],
    lock: CordLock,
    book: WorkingBook,
  ): { grid: Grid; findings: Finding[] };
}
