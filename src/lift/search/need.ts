import type { Cord, CordLock, Drive, Eye, LiftKind, Tube } from "../../job/index.ts";
import type { UnitChoice } from "../../units/index.ts";

/** What a shade asks of its hardware, whatever that will be. From left to right, mm and N. */
export interface HardwareNeed {
  units: UnitChoice;
  controlSide: "left" | "right";
  columnsMm: readonly number[];
  widthMm: number;
  boardLengthMm: number;
  boardDepthMm: number;
  /** Weight on the cords as the first fold begins, and with the shade raised. */
  heldLoweredN: number;
  heldRaisedN: number;
  /** Of the whole shade, for drives that state a limit. */
  massKg: number;
  riseMm: number;
  travelMm: number;
  /** Cord for tail or turns, and knots, each. */
  spareMm: number;
  straightRunMm: number;
  /** Most that the hand may be asked to pull. */
  handMostN: number;
}

/** Parts to choose among. */
export interface PartShelf {
  locks: readonly CordLock[];
  cords: readonly Cord[];
  eyes: readonly Eye[];
  tubes: readonly Tube[];
  drives: readonly Drive[];
}

/** One way to raise the shade: a lock with its eyes, or a tube with its drive, and the cord. */
export interface HardwareSet {
  kind: LiftKind;
  cord: Cord;
  lock?: CordLock;
  eye?: Eye;
  tube?: Tube;
  drive?: Drive;
  /** At the hand, where it is greatest: 0 for a motor. Small turns into a lock are left out. */
  pullN: number;
  /** Of its parts and cord; absent where one has no price. */
  price?: number;
  /** Pieces to fit and thread. */
  pieces: number;
}

/** Parts that do not go together, or not with this shade, and how many sets that refuses. */
export interface Refusal {
  id: string;
  partIds: string[];
  /** A sentence with its figures. */
  text: string;
  sets: number;
}

export interface HardwareSearch {
  considered: number;
  feasible: number;
  /** The best sets of each kind, the easiest pull first, then the cheapest. */
  sets: HardwareSet[];
  refusals: Refusal[];
}
