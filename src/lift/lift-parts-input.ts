import { type ReadOf, reads } from "../job/index.ts";
import type { Column, Size } from "../shade-plan/index.ts";

/** What the choice of lock, or of tube and drive, reads of a shade. */
export const LIFT_PARTS_READS = reads({
  shade: [
    "units",
    "style",
    "liftKind",
    "lock",
    "locks",
    "cord",
    "eye",
    "turnEye",
    "tube",
    "drive",
    "drives",
    "bar",
    "cloths",
  ],
  making: ["lift", "board", "hobble", "tuck", "gather", "relax", "pleat", "columns"],
});
export type LiftPartsShade = ReadOf<typeof LIFT_PARTS_READS>;

/** What the choice follows from. */
export interface LiftPartsInput {
  shade: LiftPartsShade;
  size: Size;
  columns: readonly Column[];
}
