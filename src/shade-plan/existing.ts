import type { ClothPlan } from "./cloth.ts";
import type { Row } from "./grid.ts";
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
    | "make-safer"
  )[];
  /** How it was raised before. */
  strung: Lift["kind"];
  /** Numbers of the rows whose rings are sewn on now: added, or moved to even rows. */
  newRows: number[];
  /** What is put on new. */
  takes: {
    cords: boolean;
    lock: boolean;
    /** An eye above every column. */
    eyes: boolean;
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

/** Rows whose rings are sewn on: all of a new shade, the added or moved ones of one that hangs already. */
export function rowsToSew(rows: readonly Row[], existing: ExistingPlan | undefined): readonly Row[] {
  return existing === undefined ? rows : rows.filter(({ number }) => existing.newRows.includes(number));
}
