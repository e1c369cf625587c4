import { type ReadOf, reads } from "../job/index.ts";
import type { Form, Grid, Mass, Size } from "../shade-plan/index.ts";
import type { CleatLiftParts, LiftParts, LockLiftParts } from "./lift-parts.ts";
import type { TubeLiftParts } from "./tube/tube-lift-parts.ts";

/** What the lift and the rig read of a shade. */
export const LIFT_READS = reads({
  shade: [
    "shadeId",
    "path",
    "units",
    "purpose",
    "style",
    "opening",
    "rearCords",
    "cord",
    "eye",
    "turnEye",
    "ring",
    "tube",
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

/** The same over a lock, down to a cleat, and with a tube. */
export type CleatInput = LiftInput & { liftParts: CleatLiftParts };
export type LockInput = LiftInput & { liftParts: LockLiftParts };
export type TubeInput = LiftInput & { liftParts: TubeLiftParts };

/** @throws where the parts are none of a lock: a bug */
export function lockInput({ liftParts, ...input }: LiftInput): LockInput {
  if (liftParts.takeUp !== "lock") throw new Error(`invalid liftParts: ${liftParts.kind} has no lock`);
  return { ...input, liftParts };
}

/** @throws where the parts are none of a cleat: a bug */
export function cleatInput({ liftParts, ...input }: LiftInput): CleatInput {
  if (liftParts.takeUp !== "cleat") throw new Error(`invalid liftParts: ${liftParts.kind} has no cleat`);
  return { ...input, liftParts };
}

/** @throws where the parts are none of a tube: a bug */
export function tubeInput({ liftParts, ...input }: LiftInput): TubeInput {
  if (liftParts.takeUp !== "tube") throw new Error(`invalid liftParts: ${liftParts.kind} has no tube`);
  return { ...input, liftParts };
}
