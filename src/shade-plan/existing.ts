import type { ClothPlan } from "./cloth.ts";
import type { Column, Grid, Row } from "./grid.ts";
import type { Lift } from "./lift.ts";

/** What is done to a shade that hangs already, and what that takes: all else stays as it is. */
export interface ExistingPlan {
  tasks: readonly (
    | "restring"
    | "fit-lock"
    | "replace-lock"
    | "go-cordless"
    | "even-rows"
    | "add-rows"
    | "add-columns"
    | "make-safer"
  )[];
  /** How it was raised before. */
  strung: Lift["kind"];
  /** Numbers of the rows whose rings are sewn on now: added, or moved to even rows. */
  newRows: number[];
  /** Numbers of the columns that are added: rings on every row, a cord and an eye each. */
  newColumns: number[];
  /** What is put on new. */
  takes: {
    cords: boolean;
    lock: boolean;
    /** Eyes above columns: one for every column, for those added, or none. */
    eyes: number;
    lastEye: boolean;
    cleat: boolean;
    tube: boolean;
    sleeves: boolean;
    rings: number;
  };
}

/** The cloth that is cut for a shade: all of it, or of one that hangs already its sleeves alone. */
export function clothTaken(
  { layers, trims }: Pick<ClothPlan, "layers" | "trims">,
  existing: ExistingPlan | undefined,
): Pick<ClothPlan, "layers" | "trims"> {
  if (existing === undefined) return { layers, trims };
  return { layers: [], trims: existing.takes.sleeves ? trims.filter(({ id }) => id === SLEEVES) : [] };
}

/** Id of the sewn sleeves among what is cut beside the layers. */
const SLEEVES = "sleeves";

/** A row with the columns at which a ring is sewn on it. */
interface RowToSew {
  row: Row;
  columns: readonly Column[];
}

/** Where rings are sewn: everywhere on a new shade; on one that hangs already, on added or moved rows and at added columns. */
export function rowsToSew(
  { rows, columns }: Pick<Grid, "rows" | "columns">,
  existing: ExistingPlan | undefined,
): RowToSew[] {
  return rows
    .map((row): RowToSew => {
      const isWhole = existing === undefined || existing.newRows.includes(row.number);
      return {
        row,
        columns: isWhole ? columns : columns.filter(({ number }) => existing.newColumns.includes(number)),
      };
    })
    .filter((one) => one.columns.length > 0);
}
