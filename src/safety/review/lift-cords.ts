import type { RearGuide } from "../../shade/index.ts";
import type { LoopDevice } from "./cord-geometry.ts";

/**
 * What the review must know of a lift. Small on purpose: a lift of any kind that has these fields can be
 * reviewed, whatever else it holds.
 */
export type LiftCords = CordLockCords | SpringCords | WandCords | LoopCords | MotorCords;

interface AnyLift {
  /** How the lift cords run up the back; open rings where it is not said. */
  rearCords?: RearGuide;
}

/** Cords run along the board through eyes, over a lock, and hang at the front. */
export interface CordLockCords extends AnyLift {
  kind: "cord-lock";
  housingHeightMm: number;
  tailLoweredMm: number;
  tailRaisedMm: number;
  cords: readonly unknown[];
  eyes: readonly { xMm: number }[];
  seat: { xMm: number };
}

/** Spools under a spring: the shade is raised by hand at its hem. */
export interface SpringCords extends AnyLift {
  kind: "spring";
}

/** A tube turned by a rigid wand. */
export interface WandCords extends AnyLift {
  kind: "tube-wand";
  wandMm?: number;
}

/** A tube turned by a continuous loop. */
export interface LoopCords extends AnyLift {
  kind: "tube-loop";
  /** Below the clutch, mm. */
  loopDropMm: number;
  /** A tensioner where it is not said. */
  loopDevice?: LoopDevice;
  /** Clutch below the top line; the underside of the board where it is not said, mm. */
  loopExitBelowTopMm?: number;
}

/** A tube turned by a motor without a cord at the front. */
export interface MotorCords extends AnyLift {
  kind: "motor";
}
