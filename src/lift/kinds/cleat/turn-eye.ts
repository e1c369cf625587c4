import { EYE_FROM_END_MM } from "../../../job/index.ts";
import { alongHeadMm, type TurnEye } from "../../../shade-plan/index.ts";
import { SAME_LENGTH_MM } from "../../../units/index.ts";
import { acrossFromControl, alongFromControl, type ControlFrame } from "../../control-frame.ts";
import type { CleatInput } from "../../lift-input.ts";

/** Wood kept between two eyes. */
const BETWEEN_EYES_MM = 3;

/**
 * The last eye: one of its own as near to the end of the board as the wood bears, so that the cords hang in the open
 * beside the shade; where the eye of the outer column leaves it no room there, that one serves.
 */
export function turnEyeOf({ shade, size, grid }: CleatInput, frame: ControlFrame): TurnEye {
  const { eye, turnEye, board } = shade;
  const zMm = board.depthMm / 2;
  const part = { zMm, id: turnEye.id, name: turnEye.name, diameterMm: turnEye.outsideDiameterMm };
  const leftMm = (size.finishedWidthMm - size.boardLengthMm) / 2;
  const endMm = Math.min(...[leftMm, leftMm + size.boardLengthMm].map((xMm) => alongFromControl(frame, xMm)));
  const outer = frame.side === "right" ? grid.columns.at(-1) : grid.columns[0];
  const ownMm = endMm + EYE_FROM_END_MM + turnEye.outsideDiameterMm / 2;
  if (outer === undefined) return { ...part, xMm: acrossFromControl(frame, ownMm) };
  const apartMm = (eye.outsideDiameterMm + turnEye.outsideDiameterMm) / 2 + BETWEEN_EYES_MM;
  const hasRoom = alongFromControl(frame, outer.xMm) - ownMm >= apartMm - SAME_LENGTH_MM;
  return hasRoom
    ? { ...part, xMm: acrossFromControl(frame, ownMm) }
    : { ...part, xMm: outer.xMm, column: outer.number };
}

/** Along the board from its left finished edge, mm. */
export function fromLeftAlong({ size }: Pick<CleatInput, "size">, xMm: number): number {
  return alongHeadMm(size, 0, xMm);
}
