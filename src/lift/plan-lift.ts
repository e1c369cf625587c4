import type { Finding, WorkingBook } from "../figures/index.ts";
import type { CordLockLift, TubeLift } from "../shade-plan/index.ts";
import { judgeTopRail } from "./judge-top-rail.ts";
import type { LiftInput } from "./lift-input.ts";
import { planLock } from "./plan-lock.ts";
import { topRail } from "./top-rail.ts";
import { planTube } from "./tube/plan-tube.ts";
import type { TubeInput } from "./tube/tube-input.ts";

interface Planned<L> {
  lift: L;
  findings: Finding[];
}

/** Lift and rig of one shade: over the lock, or with the tube and drive, that were chosen before the folds were laid. */
export function planLift(input: LiftInput, book: WorkingBook): Planned<CordLockLift>;
export function planLift(input: TubeInput, book: WorkingBook): Planned<TubeLift>;
export function planLift(input: LiftInput | TubeInput, book: WorkingBook): Planned<CordLockLift | TubeLift>;
export function planLift(input: LiftInput | TubeInput, book: WorkingBook): Planned<CordLockLift | TubeLift> {
  const { lift, findings } = "liftParts" in input ? planTube(input, book) : planLock(input, book);
  const rail = topRail(input.resolved, input.size, input.grid, book);
  return {
    lift: rail === undefined ? lift : { ...lift, topRail: rail },
    findings: [...findings, ...judgeTopRail(input.resolved, rail)],
  };
}
