import { type ReadOf, reads } from "../job/index.ts";
import type { Form, Grid, Mass, Size } from "../shade-plan/index.ts";
import type { LiftParts, LockLiftParts } from "./choose-lift-parts.ts";

/** What the lift and the rig read of a shade. */
export const LIFT_READS = reads({
  shade: [
    "shadeId",
    "path",
    "ownGroups",
    "units",
    "purpose",
    "style",
    "opening",
    "rearCords",
    "cord",
    "eye",
    "bar",
    "board",
    "locks",
    "drives",
    "parts",
  ],
  making: ["lift", "fold", "board"],
  own: ["lift"],
});
export type LiftShade = ReadOf<typeof LIFT_READS>;

/** What the lift and the rig of one shade follow from. */
export interface LiftInput {
  shade: LiftShade;
  size: Size;
  grid: Grid;
  form: Form;
  mass: Mass;
  /** As `chooseLiftParts` chose them before the folds were laid. */
  liftParts: LiftParts;
}

/** The same over a cord lock. */
export type LockInput = LiftInput & { liftParts: LockLiftParts };
