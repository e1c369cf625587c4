export { chooseLiftParts } from "./choose-lift-parts.ts";
/** @public Cord lengths from bare numbers, without a job. */
export { cordLengths } from "./cord-lengths.ts";
export { HARD_PULL } from "./hard-pull.ts";
export { LIFT_READS, type LiftInput, type LockInput, type TubeInput } from "./lift-input.ts";
export type { LiftParts } from "./lift-parts.ts";
export { LIFT_PARTS_READS } from "./lift-parts-input.ts";
export { misfits as lockMisfits } from "./lock/lock-fit.ts";
export { ownFit } from "./lock/own-fit.ts";
/** @public The hanging cord at any height, for the safety review. */
export { tailAt } from "./lock/tail-at.ts";
export { planLift } from "./plan-lift.ts";
export type { HardwareNeed, HardwareSearch, HardwareSet, PartShelf, Refusal } from "./search/need.ts";
export { searchHardware } from "./search/search-hardware.ts";
