import type { WorkingBook } from "../figures/index.ts";
import type { CordLock, ResolvedShade } from "../job/index.ts";
import type { Column, Size } from "../shade-plan/index.ts";
import { chooseLock } from "./choose-lock.ts";
import { chooseTubeLiftParts } from "./tube/choose-tube-lift-parts.ts";
import type { TubeLiftParts } from "./tube/tube-input.ts";

export interface LockLiftParts {
  kind: "cord-lock";
  lock: CordLock;
  /** Lowest part below the underside of the board, mm. */
  heightMm: number;
  label: string;
}

export type LiftParts = LockLiftParts | TubeLiftParts;

/** What will take up the cords, chosen before the folds are laid: its height decides the headrail allowance. */
export function chooseLiftParts(
  resolved: ResolvedShade,
  size: Size,
  columns: readonly Column[],
  book: WorkingBook,
): LiftParts {
  if (resolved.liftKind !== "cord-lock")
    return chooseTubeLiftParts(resolved, resolved.liftKind, size, columns, book);
  const { lock } = chooseLock(resolved, columns.length);
  return { kind: "cord-lock", lock, heightMm: lock.housingHeightMm, label: "lock height" };
}

/** The lift parts as `planLift` takes it. */
export function liftPartsInput(liftParts: LiftParts): { lock: CordLock } | { liftParts: TubeLiftParts } {
  return liftParts.kind === "cord-lock" ? { lock: liftParts.lock } : { liftParts };
}
