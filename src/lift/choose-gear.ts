import type { WorkingBook } from "../figures/index.ts";
import type { CordLock, ResolvedShade } from "../job/index.ts";
import type { Column, Size } from "../shade-plan/index.ts";
import { chooseLock } from "./choose-lock.ts";
import { chooseTubeGear } from "./tube/choose-tube-gear.ts";
import type { TubeGear } from "./tube/tube-input.ts";

export interface LockGear {
  kind: "cord-lock";
  lock: CordLock;
  /** Lowest part below the underside of the board, mm. */
  heightMm: number;
  label: string;
}

export type Gear = LockGear | TubeGear;

/** What will take up the cords, chosen before the folds are laid: its height decides the headrail allowance. */
export function chooseGear(
  resolved: ResolvedShade,
  size: Size,
  columns: readonly Column[],
  book: WorkingBook,
): Gear {
  if (resolved.liftKind !== "cord-lock")
    return chooseTubeGear(resolved, resolved.liftKind, size, columns, book);
  const { lock } = chooseLock(resolved, columns.length);
  return { kind: "cord-lock", lock, heightMm: lock.housingHeightMm, label: "lock height" };
}

/** The gear as `planLift` takes it. */
export function gearInput(gear: Gear): { lock: CordLock } | { gear: TubeGear } {
  return gear.kind === "cord-lock" ? { lock: gear.lock } : { gear };
}
