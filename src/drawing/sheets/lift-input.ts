import type { CleatLift, CordLockLift, TubeLift } from "../../shade-plan/index.ts";
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

/** Cords that leave the board for a hand: where across, mm, and how far below the top line over a level head. */
export function cordExit({ shade }: LockSheetInput | CleatSheetInput): { xMm: number; yMm: number } {
  const { lift, board } = shade;
  return lift.takeUp === "lock"
    ? { xMm: lift.seat.xMm, yMm: board.thicknessMm + lift.housingHeightMm }
    : { xMm: lift.turn.xMm, yMm: board.thicknessMm + lift.turn.diameterMm };
}

export function isTubeSheet(input: SheetInput): input is TubeSheetInput {
  return input.shade.lift.takeUp === "tube";
}
