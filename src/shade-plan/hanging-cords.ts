import { type HeadShape, headYMm } from "./head-line.ts";
import type { CleatLift, CordLockLift, TopRail, TubeLift } from "./lift.ts";

/** Cords with a free end that hang at the front, each lot out of a lock or over a last eye of its own. */
export interface HangingCords {
  /** What they raise: the shade from its hem, or a top that can be let down. */
  raises: "shade" | "top-rail";
  count: number;
  /** End of the board at which they hang, seen from the room. */
  side: "left" | "right";
  /** What they hang from. */
  from: "lock" | "last eye";
  /** Below that with what they raise let down, and raised, mm. */
  downMm: number;
  upMm: number;
  /** That, from the left finished edge, and how far below the underside of the board its lower edge lies, mm. */
  exitX: number;
  underBoardMm: number;
}

type Tails = "controlSide" | "tailLoweredMm" | "tailRaisedMm";

interface Railed {
  topRail?: Pick<TopRail, "side" | "tailDownMm" | "tailUpMm" | "housingHeightMm"> & {
    cords: readonly unknown[];
    seat: { xMm: number };
  };
}

/** A lift over a lock has tails and a seat, one without has a last eye; any may have a top rail. */
type Hung =
  | (Railed &
      Pick<CordLockLift, "kind" | Tails | "housingHeightMm"> & {
        cords: readonly unknown[];
        seat: { xMm: number };
      })
  | (Railed &
      Pick<CleatLift, "kind" | Tails> & {
        cords: readonly unknown[];
        turn: { xMm: number; diameterMm: number };
      })
  | (Railed & Pick<TubeLift, "kind">);

/** All cords with a free end at the front of a lift: whoever says what hangs there asks here. */
export function hangingCords(lift: Hung): HangingCords[] {
  return [...liftCordsHanging(lift), ...railCordsHanging(lift)];
}

function liftCordsHanging(lift: Hung): HangingCords[] {
  switch (lift.kind) {
    case "cord-lock":
      return tails(lift, { from: "lock", exitX: lift.seat.xMm, underBoardMm: lift.housingHeightMm });
    case "cleat":
      return tails(lift, { from: "last eye", exitX: lift.turn.xMm, underBoardMm: lift.turn.diameterMm });
    case "spring":
    case "tube-wand":
    case "tube-loop":
    case "motor":
      return [];
  }
}

function tails(
  {
    controlSide,
    cords,
    tailLoweredMm,
    tailRaisedMm,
  }: Pick<CordLockLift, Tails> & { cords: readonly unknown[] },
  at: Pick<HangingCords, "from" | "exitX" | "underBoardMm">,
): HangingCords[] {
  if (cords.length === 0) return [];
  return [
    {
      raises: "shade",
      count: cords.length,
      side: controlSide,
      downMm: tailLoweredMm,
      upMm: tailRaisedMm,
      ...at,
    },
  ];
}

function railCordsHanging({ topRail }: Railed): HangingCords[] {
  if (topRail === undefined) return [];
  const { cords, side, tailDownMm, tailUpMm, seat, housingHeightMm } = topRail;
  return [
    {
      raises: "top-rail",
      count: cords.length,
      side,
      from: "lock",
      downMm: tailDownMm,
      upMm: tailUpMm,
      exitX: seat.xMm,
      underBoardMm: housingHeightMm,
    },
  ];
}

/** Where they leave lock or eye, below the top line: the head over it, the board and what is screwed under it, mm. */
export function exitBelowTopMm(
  { exitX, underBoardMm }: Pick<HangingCords, "exitX" | "underBoardMm">,
  head: HeadShape,
  boardMm: number,
): number {
  return headYMm(head, exitX) + boardMm + underBoardMm;
}
