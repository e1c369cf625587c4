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
}

interface Railed {
  topRail?: Pick<TopRail, "side" | "tailDownMm" | "tailUpMm"> & { cords: readonly unknown[] };
}
interface Locked extends Railed {
  kind: "cord-lock";
  controlSide: "left" | "right";
  cords: readonly unknown[];
  tailLoweredMm: number;
  tailRaisedMm: number;
}
interface OnTube extends Railed {
  kind: "spring" | "tube-wand" | "tube-loop" | "motor";
}

/** All cords with a free end at the front of a lift: whoever says what hangs there asks here. */
export function hangingCords(lift: Locked | OnTube): HangingCords[] {
  const list: HangingCords[] = [];
  if (lift.kind === "cord-lock" && lift.cords.length > 0) {
    const { controlSide, cords, tailLoweredMm, tailRaisedMm } = lift;
    list.push({
      raises: "shade",
      count: cords.length,
      side: controlSide,
      downMm: tailLoweredMm,
      upMm: tailRaisedMm,
    });
  }
  const { topRail } = lift;
  if (topRail !== undefined) {
    const { side, cords, tailDownMm, tailUpMm } = topRail;
    list.push({ raises: "top-rail", count: cords.length, side, downMm: tailDownMm, upMm: tailUpMm });
  }
  return list;
}
