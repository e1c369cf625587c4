import type { LiftTraits } from "../../job/index.ts";
import type { CordLockLift } from "../../shade-plan/index.ts";

/** Cords over a lock, whatever kind of lift they belong to. */
export type LockRig = Omit<CordLockLift, "kind" | keyof LiftTraits>;
