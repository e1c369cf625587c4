import type { CordLockLift, TubeLift } from "../../shade-plan/index.ts";
import type { SheetInput } from "./sheet-input.ts";

/** A sheet of a shade with a cord lock, and one of a shade with a lift tube. */
export type LockInput = SheetInput & { shade: { lift: CordLockLift } };
export type TubeInput = SheetInput & { shade: { lift: TubeLift } };

export function hasLock(input: SheetInput): input is LockInput {
  return input.shade.lift.takeUp === "lock";
}

export function hasTube(input: SheetInput): input is TubeInput {
  return input.shade.lift.takeUp === "tube";
}
