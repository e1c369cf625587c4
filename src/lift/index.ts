export { chooseLock, type LockChoice } from "./choose-lock.ts";
export { type CordLengthsInput, cordLengths } from "./cord-lengths.ts";
export type { LiftInput } from "./lift-input.ts";
export { planLift } from "./plan-lift.ts";
export { type TailState, tailAt } from "./tail-at.ts";
