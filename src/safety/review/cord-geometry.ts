import type { LiftKind, RearGuide } from "../../job/index.ts";
import type { HangingCords } from "../../shade-plan/index.ts";
import type { Course } from "./course.ts";

/**
 * The cords of a shade as a child meets them, at every height: all that the review reads.
 * Heights above the floor are there where the window's height is known.
 */
export interface CordGeometry {
  kind: LiftKind;
  /** Height of the blind itself, mm: H of EN 13120. */
  blindHeightMm: number;
  /** Top line above the floor, mm: H0 of EN 13120. */
  topAboveFloorMm?: number;
  /** Highest thing at the window that a child can stand on, above the floor, mm; undefined where it was not said. */
  footholdMm?: number;
  /** What that is: `bed`. */
  footholdName?: string;
  /** Lower edge below the top line, shade lowered, mm. */
  hemBelowTopMm: number;
  /** How far the bottom row rises from lowered to raised, mm. */
  travelMm: number;
  /** One entry for the cords of each lock, or of a last eye. */
  pulls: readonly PullCords[];
  loop?: OperatingLoop;
  /** Rigid wand: no cord, and no rule that was read speaks of it. */
  wandMm?: number;
  rear?: RearCords;
  /** Longest stretch of a motor’s lead that hangs free between two clips, mm; undefined where nobody measured it. */
  leadLooseMm?: number;
  /** Its lowest point above the floor, mm; undefined where nobody measured it. */
  leadLowMm?: number;
  /** Cords of a top rail between neighbouring points that hold them along the board, mm. */
  railSpansMm?: readonly number[];
  /** Stretch of the cord for each newton that it is pulled by, share of its length. */
  stretchPerN: number;
}

/** Cords with a free end that hang at the front, out of one lock or over one last eye. */
export interface PullCords {
  raises: HangingCords["raises"];
  from: HangingCords["from"];
  count: number;
  /** Below the point from which they hang, mm. */
  lengthMm: Course;
  /** Down to the connector that joins them; absent where they hang apart or there is one. */
  joinedMm?: Course;
  exitBelowTopMm: number;
  cleatAboveFloorMm: number;
}

/** A tensioner, one with a connector in the loop that comes apart as well, or nothing. */
export const LOOP_DEVICES = ["tensioner", "breakaway", "none"] as const;
export type LoopDevice = (typeof LOOP_DEVICES)[number];

/** A continuous loop of cord or chain that turns a tube. */
export interface OperatingLoop {
  /** Below the point from which it hangs, mm. */
  dropMm: number;
  /** Around the whole loop, mm. */
  perimeterMm: number;
  device: LoopDevice;
  exitBelowTopMm: number;
}

/** Lift cords up the back, all alike but for what they carry. */
export interface RearCords {
  count: number;
  guide: RearGuide;
  /** A part at each bottom ring comes apart under a load. */
  releases?: true;
  /** From the bottom row up; the last ends at the board or at a spool below it. */
  spans: RearSpan[];
  /** Where that is, below the top line, mm. */
  endBelowTopMm: number;
  /** Between neighbouring points that hold the cords along the board, mm; none under a tube. */
  boardSpansMm: readonly number[];
  /** Weight on all cords together while each span gathers, N, and the share of the least loaded cord. */
  heldN: readonly number[];
  leastShare: number;
  /** Cord on ring, eye and lock. */
  friction: number;
  /** Angle through which a cord turns in the rings below a span that is pulled, rad: 0 in line. */
  wrapBelowRad: number;
  top: RearTop;
}

/**
 * What a pull at the back meets at the board: a lock, clutch or motor that holds, or a spool under a spring
 * that balances the load, with the angle through which the cord turns on its way there.
 */
export type RearTop = { holds: true } | { holds: false; wrapRad: number };

/** Between two neighbouring guides of the rear cords, shade lowered. */
export interface RearSpan {
  /** Cord between the two, mm. */
  cordMm: number;
  /** Cloth between the two, mm: more than cord where the style hangs it in folds, gathers or swags even lowered. */
  clothMm: number;
  /** How much of it is taken up when the shade is raised, mm. */
  gathersMm: number;
  /** Rise of the bottom row at which it begins to gather, mm. */
  startsMm: number;
  /** Lower guide below the top line, mm. */
  lowerBelowTopMm: number;
  /** Ends at the board and not at a ring. */
  top: boolean;
}

/** Height of a point above the floor; undefined where the window's height is not known. */
export function aboveFloorMm(geometry: CordGeometry, belowTopMm: number): number | undefined {
  return geometry.topAboveFloorMm === undefined ? undefined : geometry.topAboveFloorMm - belowTopMm;
}
