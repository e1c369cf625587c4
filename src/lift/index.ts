export { chooseGear, gearInput } from "./choose-gear.ts";
export { chooseLock } from "./choose-lock.ts";
/** @public Cord lengths from bare numbers, without a job. */
export { cordLengths } from "./cord-lengths.ts";
export type { LiftInput } from "./lift-input.ts";
export { planLift } from "./plan-lift.ts";
/** @public The hanging cord at any height, for the safety review. */
export { tailAt } from "./tail-at.ts";
export type { TubeInput } from "./tube/tube-input.ts";
