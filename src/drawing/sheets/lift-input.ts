import { type CleatLift, type CordLockLift, headYMm, type TubeLift } from "../../shade-plan/index.ts";
import type { SheetInput } from "./sheet-input.ts";

/** A sheet of a shade with a cord lock, without one, and with a lift tube. */
export type LockSheetInput = SheetInput & { shade: { lift: CordLockLift } };
export type CleatSheetInput = SheetInput & { shade: { lift: CleatLift } };
export type TubeSheetInput = SheetInput & { shade: { lift: TubeLift } };

export function isLockSheet(input: SheetInput): input is LockSheetInput {
  return input.shade.lift.takeUp === "lock";
}

export function isCleatSheet(input: SheetInput): input is CleatSheetInput {
  return input.shade.lift.takeUp === "cleat";
}

/** Cords that leave the board for a hand: where across, and how far below the top line, the head as it is there, mm. */
export function cordExit({ shade }: LockSheetInput | CleatSheetInput): { xMm: number; yMm: number } {
  const { lift, board, size } = shade;
  const [xMm, underBoardMm] =
    lift.takeUp === "lock" ? [lift.seat.xMm, lift.housingHeightMm] : [lift.turn.xMm, lift.turn.diameterMm];
  return { xMm, yMm: headYMm(size, xMm) + board.thicknessMm + underBoardMm };
}

export function isTubeSheet(input: SheetInput): input is TubeSheetInput {
  return input.shade.lift.takeUp === "tube";
}
