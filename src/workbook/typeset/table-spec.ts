export type Align = "left" | "right" | "measure";

interface TableColumn {
  title: string;
  /** Share of the width, against the other columns. */
  share: number;
  /** `measure` puts whole numbers flush right on an axis and hangs fraction and unit after it. */
  align?: Align;
}

/** What a cell holds: text, and perhaps something drawn at its left (a swatch, a box to tick). */
interface Cell {
  text: string;
  strong?: boolean;
  quiet?: boolean;
  sign?: { widthPt: number; draw: (x: number, middleY: number) => void };
}

export type CellLike = string | Cell;

export interface TableSpec {
  columns: readonly TableColumn[];
  rows: readonly (readonly CellLike[])[];
  /** What the table holds, for those who hear it. */
  title: string;
  /** A heading over it, which never parts from it, and a few words under the heading. */
  heading?: string;
  intro?: string;
  x?: number;
  width?: number;
  /** The last row is a sum: ruled off and strong. */
  sum?: boolean;
  /** Rows that name what follows them: they never end a page. */
  leads?: ReadonlySet<number>;
  /** Room for writing by hand: rows at least this high. */
  rowHeightPt?: number;
  /** Never parted where a page holds it. */
  whole?: true;
  /** Space under it. */
  after?: number;
}
