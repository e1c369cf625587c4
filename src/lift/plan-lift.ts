import type { StageResult } from "../figures/index.ts";
import type { CordLockLift, Lift, TubeLift } from "../shade-plan/index.ts";
import { judgeTopRail } from "./judge-top-rail.ts";
import type { LiftInput, LockInput } from "./lift-input.ts";
import { planLock } from "./lock/plan-lock.ts";
import { topRail } from "./top-rail.ts";
import { planTube } from "./tube/plan-tube.ts";
import type { TubeInput } from "./tube/tube-input.ts";

/** Lift and rig of one shade: over the lock, or with the tube and drive, that were chosen before the folds were laid. */
export function planLift(input: LockInput): StageResult<CordLockLift>;
export function planLift(input: TubeInput): StageResult<TubeLift>;
export function planLift(input: LiftInput): StageResult<Lift>;
export function planLift(input: LiftInput): StageResult<Lift> {
  const { values: lift, findings, workings } = planKind(input);
  const rail = topRail(input);
  return {
    values: rail.values === undefined ? lift : { ...lift, topRail: rail.values },
    findings: [...findings, ...judgeTopRail(input.shade, rail.values)],
    workings: [...workings, ...rail.workings],
  };
}

function planKind({ liftParts, ...input }: LiftInput): StageResult<Lift> {
  return liftParts.kind === "cord-lock"
    ? planLock({ ...input, liftParts })
    : planTube({ ...input, liftParts });
}
