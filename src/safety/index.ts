export { askPlace } from "./ask-place.ts";
export { type CautionInput, planCautions } from "./plan-cautions.ts";
export { proposedLift } from "./propose-lift.ts";
export { type CarefulLift, carefulLift } from "./review/careful-lift.ts";
export type { LiftCords } from "./review/lift-cords.ts";
export type { ReviewInput } from "./review/review-input.ts";
export { reviewShade } from "./review/review-shade.ts";
export { SAFETY_READS } from "./safety-reads.ts";
export { childTag, type TagInput } from "./tag/child-tag.ts";
