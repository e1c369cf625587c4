import { type LiftKindOf, type ReadOf, reads } from "../job/index.ts";
import type { Column, Size } from "../shade-plan/index.ts";
import type { LockChoice } from "./lock/choose-lock.ts";
import type { TubeLiftParts } from "./tube/tube-lift-parts.ts";

/** What the choice of lock, or of tube and drive, reads of a shade. */
export const LIFT_PARTS_READS = reads({
  shade: ["units", "liftKind", "lock", "locks", "cord", "tube", "drive", "drives", "bar", "cloths"],
  making: ["lift", "board"],
});
export type LiftPartsShade = ReadOf<typeof LIFT_PARTS_READS>;

/** What the choice follows from. */
export interface LiftPartsInput {
  shade: LiftPartsShade;
  size: Size;
  columns: readonly Column[];
}

export interface LockLiftParts extends LockChoice {
  takeUp: "lock";
  kind: LiftKindOf<"lock">;
  /** Lowest part below the underside of the board, mm. */
  heightMm: number;
  label: string;
}

/** What takes up the cords. */
export type LiftParts = LockLiftParts | TubeLiftParts;
