import type { BoardLine } from "../gaps.ts";
import type { HardwareNeed } from "./need.ts";

/** The board with what hangs over its columns, from the control side, before its parts are chosen. */
export function bareBoard({
  columnsMm,
  controlSide,
  widthMm,
  boardLengthMm,
}: HardwareNeed): Pick<BoardLine, "eyesMm" | "boardFromMm" | "boardToMm"> {
  const boardFromMm = (widthMm - boardLengthMm) / 2;
  return {
    eyesMm: columnsMm.map((x) => (controlSide === "right" ? widthMm - x : x)).sort((a, b) => a - b),
    boardFromMm,
    boardToMm: boardFromMm + boardLengthMm,
  };
}
