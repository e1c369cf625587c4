import { type HeadShape, headYMm } from "./head-line.ts";
import type { TopRail } from "./lift.ts";

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
  /** That, from the left finished edge, where it is known, mm. */
  exitX?: number;
}

/** A lift over a lock has tails and a seat, one without has a last eye; any may have a top rail. */
interface Hung {
  controlSide?: "left" | "right";
  cords?: readonly unknown[];
  tailLoweredMm?: number;
  tailRaisedMm?: number;
  seat?: { xMm: number };
  turn?: { xMm: number };
  topRail?: Pick<TopRail, "side" | "tailDownMm" | "tailUpMm"> & {
    cords: readonly unknown[];
    seat?: { xMm: number };
  };
}

/** All cords with a free end at the front of a lift: whoever says what hangs there asks here. */
export function hangingCords(lift: Hung): HangingCords[] {
  const list: HangingCords[] = [];
  const { controlSide = "right", cords = [], tailLoweredMm, tailRaisedMm, seat, turn, topRail } = lift;
  const exit = seat ?? turn;
  if (tailLoweredMm !== undefined && tailRaisedMm !== undefined && cords.length > 0) {
    list.push({
      raises: "shade",
      count: cords.length,
      side: controlSide,
      from: turn === undefined ? "lock" : "last eye",
      downMm: tailLoweredMm,
      upMm: tailRaisedMm,
      ...(exit === undefined ? {} : { exitX: exit.xMm }),
    });
  }
  if (topRail !== undefined) {
    const { side, tailDownMm, tailUpMm, seat: railSeat } = topRail;
    list.push({
      raises: "top-rail",
      count: topRail.cords.length,
      side,
      from: "lock",
      downMm: tailDownMm,
      upMm: tailUpMm,
      ...(railSeat === undefined ? {} : { lockX: railSeat.xMm }),
    });
  }
  return list;
}

/** Where they leave lock or eye, below the top line: the head over it, the board and what is screwed under it, mm. */
export function exitBelowTopMm(
  { exitX }: HangingCords,
  head: HeadShape,
  { boardMm, housingMm }: { boardMm: number; housingMm: number },
): number {
  return (exitX === undefined ? 0 : headYMm(head, exitX)) + boardMm + housingMm;
}
