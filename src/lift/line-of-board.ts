import type { CordLock } from "../job/index.ts";
import { alongFromControl, type ControlFrame } from "./control-frame.ts";
import type { BoardLine } from "./gaps.ts";
import type { LiftInput } from "./lift-input.ts";

/** Eyes, given from the control side, and board ends as distances from there. */
export function lineOfBoard(
  { shade, size }: Pick<LiftInput, "shade" | "size">,
  frame: ControlFrame,
  eyesMm: readonly number[],
  lock: Pick<CordLock, "housingLengthMm">,
): BoardLine {
  const leftMm = (size.finishedWidthMm - size.boardLengthMm) / 2;
  const ends = [leftMm, leftMm + size.boardLengthMm].map((xMm) => alongFromControl(frame, xMm));
  return {
    eyesMm,
    boardFromMm: Math.min(...ends),
    boardToMm: Math.max(...ends),
    eyeRadiusMm: shade.eye.outsideDiameterMm / 2,
    straightRunMm: shade.making.lift.straightRunMm,
    housingLengthMm: lock.housingLengthMm,
  };
}
