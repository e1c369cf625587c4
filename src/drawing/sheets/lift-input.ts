import type { CordLockLift, TubeLift } from "../../shade-plan/index.ts";
import type { SheetInput } from "./sheet-input.ts";

/** A sheet of a shade with a cord lock, and one of a shade with a lift tube. */
export type LockSheetInput = SheetInput & { shade: { lift: CordLockLift } };
export type TubeSheetInput = SheetInput & { shade: { lift: TubeLift } };

export function isLockSheet(input: SheetInput): input is LockSheetInput {
  return input.shade.lift.takeUp === "lock";
}

export function isTubeSheet(input: SheetInput): input is TubeSheetInput {
  return input.shade.lift.takeUp === "tube";
}
