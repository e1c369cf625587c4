import { LIFT_TRAITS, type RearGuide } from "../../job/index.ts";
import type { TopRail } from "../../shade-plan/index.ts";
import type { LoopDevice } from "./cord-geometry.ts";

/**
 * What the review must know of a lift. Small on purpose: a lift of any kind that has these fields can be
 * reviewed, whatever else it holds.
 */
export type LiftCords = CordLockCords | CleatCords | SpringCords | WandCords | LoopCords | MotorCords;

/** Cords that run through eyes along the board, whether a lock or a cleat ends their way. */
export function isOverEyes(lift: LiftCords): lift is CordLockCords | CleatCords {
  return LIFT_TRAITS[lift.kind].takeUp !== "tube";
}

interface AnyLift {
  /** How the lift cords run up the back; the maker’s setting where it is not said. */
  rearCords?: RearGuide;
  /** An upper edge that can be let down, on cords of its own. */
  topRail?: Pick<TopRail, "dropMm" | "side" | "tailDownMm" | "tailUpMm" | "housingHeightMm"> & {
    cords: readonly unknown[];
    eyes: readonly { xMm: number }[];
    seat: { xMm: number };
  };
}

/** Cords run along the board through eyes, over a lock, and hang at the front. */
export interface CordLockCords extends AnyLift {
  kind: "cord-lock";
  controlSide: "left" | "right";
  housingHeightMm: number;
  tailLoweredMm: number;
  tailRaisedMm: number;
  cords: readonly unknown[];
  eyes: readonly { xMm: number }[];
  seat: { xMm: number };
}

/** Cords run along the board through eyes, over the last one, and hang down to a cleat. */
export interface CleatCords extends AnyLift {
  kind: "cleat";
  controlSide: "left" | "right";
  tailLoweredMm: number;
  tailRaisedMm: number;
  cords: readonly unknown[];
  eyes: readonly { xMm: number }[];
  turn: { xMm: number; diameterMm: number };
}

/** Cords on spools of a tube; where its axis lies below the underside of the board is taken as 0 if it is not said. */
interface OnSpools extends AnyLift {
  tube?: { axisMm: number };
}

/** Spools under a spring: the shade is raised by hand at its hem. */
export interface SpringCords extends OnSpools {
  kind: "spring";
}

/** A tube turned by a rigid wand. */
export interface WandCords extends OnSpools {
  kind: "tube-wand";
  wandMm?: number;
}

/** A tube turned by a continuous loop. */
export interface LoopCords extends OnSpools {
  kind: "tube-loop";
  /** From where it hangs down to its lowest point, mm. */
  loopDropMm: number;
  /** Around the whole loop; twice its drop where it is not said, mm. */
  loopPerimeterMm?: number;
  /** A tensioner where it is not said, with a connector that comes apart or without. */
  loopDevice?: LoopDevice;
  breakaway?: true;
  /** Where it hangs, below the top line; the underside of the board where it is not said, mm. */
  loopExitBelowTopMm?: number;
}

/** A tube turned by a motor without a cord at the front. */
export interface MotorCords extends OnSpools {
  kind: "motor";
}
