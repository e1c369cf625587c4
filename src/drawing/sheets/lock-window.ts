import { type BoardPoint, type CordLockLift, fromBoardEndMm } from "../../shade-plan/index.ts";
import type { LockSheetInput } from "./lift-input.ts";

/** Shown beyond the housing at the least, and a near eye is shown up to so far, as shares of the housing's length. */
const BESIDE = 0.45;
const NEAR_EYE = 1.6;
const MARGIN_MM = 4;

/** The stretch of board that the sheet of a lock shows, from the middle of its housing, mm. */
export interface LockWindow {
  fromMm: number;
  toMm: number;
  /** Eyes in it. */
  eyes: (BoardPoint & { number: number; alongMm: number })[];
  /** From the middle of the lock along the board, which may slope, to a place across the shade, mm. */
  along: (xMm: number) => number;
}

/** Housing, and the eyes that stand near it. */
export function lockWindow({ shade }: LockSheetInput): LockWindow {
  const { eyes, eyeDiameterMm, housingLengthMm, seat } = shade.lift;
  const lockMm = fromBoardEndMm(shade, seat.xMm);
  const along = (xMm: number) => fromBoardEndMm(shade, xMm) - lockMm;
  const near = eyes
    .map((eye, i) => ({ ...eye, number: i + 1, alongMm: along(eye.xMm) }))
    .filter(({ alongMm }) => Math.abs(alongMm) <= housingLengthMm * NEAR_EYE + eyeDiameterMm / 2);
  const least = housingLengthMm * (0.5 + BESIDE);
  const past = (way: -1 | 1) =>
    near
      .map(({ alongMm }) => way * alongMm + eyeDiameterMm / 10 + MARGIN_MM)
      .reduce((most, one) => Math.max(most, one), least);
  return { fromMm: -past(-1), toMm: past(1), eyes: near, along };
}

/** Outwards, towards the side on which the shade is worked: 1 to the right, −1 to the left. */
export function outwards({ seat }: CordLockLift): 1 | -1 {
  return seat.facing === "right" ? 1 : -1;
}
