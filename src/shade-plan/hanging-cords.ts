import { type HeadShape, headYMm } from "./head-line.ts";
import type { TopRail } from "./lift.ts";

/** Cords with a free end that hang at the front, over a lock of their own. */
export interface HangingCords {
  /** What they raise: the shade from its hem, or a top that can be let down. */
  raises: "shade" | "top-rail";
  count: number;
  /** End of the board at which they hang, seen from the room. */
  side: "left" | "right";
  /** Below their lock with what they raise let down, and raised, mm. */
  downMm: number;
  upMm: number;
  /** Their lock, from the left finished edge, where it is known, mm. */
  lockX?: number;
}

/** A lift over a lock has tails and a seat; any may have a top rail. */
interface Hung {
  controlSide?: "left" | "right";
  cords?: readonly unknown[];
  tailLoweredMm?: number;
  tailRaisedMm?: number;
  seat?: { xMm: number };
  topRail?: Pick<TopRail, "side" | "tailDownMm" | "tailUpMm"> & { cords: readonly unknown[] };
}

/** All cords with a free end at the front of a lift: whoever says what hangs there asks here. */
export function hangingCords(lift: Hung): HangingCords[] {
  const list: HangingCords[] = [];
  const { controlSide = "right", cords = [], tailLoweredMm, tailRaisedMm, seat, topRail } = lift;
  if (tailLoweredMm !== undefined && tailRaisedMm !== undefined && cords.length > 0) {
    list.push({
      raises: "shade",
      count: cords.length,
      side: controlSide,
      downMm: tailLoweredMm,
      upMm: tailRaisedMm,
      ...(seat === undefined ? {} : { lockX: seat.xMm }),
    });
  }
  if (topRail !== undefined) {
    const { side, tailDownMm, tailUpMm } = topRail;
    list.push({
      raises: "top-rail",
      count: topRail.cords.length,
      side,
      downMm: tailDownMm,
      upMm: tailUpMm,
    });
  }
  return list;
}

/** Where they leave their lock, below the top line: the head over it, the board and the lock, mm. */
export function exitBelowTopMm(
  { lockX }: HangingCords,
  head: HeadShape,
  { boardMm, housingMm }: { boardMm: number; housingMm: number },
): number {
  return (lockX === undefined ? 0 : headYMm(head, lockX)) + boardMm + housingMm;
}
