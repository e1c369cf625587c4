import type { Size } from "../../shade-plan/index.ts";
import { cite, sourced } from "../../sources/index.ts";
import { alongFromControl, type ControlFrame } from "../control-frame.ts";
import type { BoardLine } from "../gaps.ts";
import type { LiftShade } from "../lift-input.ts";

/** Kept between neighbouring parts on a tube, so that they turn without rubbing. */
export const PARTS_APART = sourced(
  3,
  "mm",
  cite("our-choice", "so that spools turn free of their neighbours"),
);

/**
 * The board under a tube as distances from the control side: spools stand where a cord lock has its eyes, and
 * the drive takes the place of the lock.
 */
export function tubeLine(
  { making }: { making: Pick<LiftShade["making"], "lift"> },
  size: Size,
  columns: readonly { xMm: number }[],
  parts: { spoolMm: number; driveMm: number },
): BoardLine {
  const frame = levelFrame(making.lift.controlSide, size);
  const boardFromMm = (size.finishedWidthMm - size.boardLengthMm) / 2;
  const fromControl = columns.map(({ xMm }) => alongFromControl(frame, xMm));
  return {
    eyesMm: frame.side === "right" ? fromControl.reverse() : fromControl,
    boardFromMm,
    boardToMm: boardFromMm + size.boardLengthMm,
    eyeRadiusMm: parts.spoolMm / 2,
    straightRunMm: PARTS_APART.value,
    housingLengthMm: parts.driveMm,
  };
}

/** A tube hangs level, whatever the head above it does. */
export function levelFrame(side: ControlFrame["side"], { finishedWidthMm }: Size): ControlFrame {
  return { side, head: { finishedWidthMm } };
}
