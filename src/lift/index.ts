export { chooseLiftParts, liftPartsInput } from "./choose-lift-parts.ts";
export { chooseLock } from "./choose-lock.ts";
/** @public Cord lengths from bare numbers, without a job. */
export { cordLengths } from "./cord-lengths.ts";
export { HARD_PULL } from "./judge-pull.ts";
export type { LiftInput } from "./lift-input.ts";
export { misfits as lockMisfits } from "./lock-fit.ts";
export { planLift } from "./plan-lift.ts";
export type { HardwareNeed, HardwareSearch, HardwareSet, PartShelf, Refusal } from "./search/need.ts";
export { searchHardware } from "./search/search-hardware.ts";
/** @public The hanging cord at any height, for the safety review. */
export { tailAt } from "./tail-at.ts";
export type { TubeInput } from "./tube/tube-input.ts";
