export type { AlignedRoom } from "./align-room.ts";
export * from "./choose-hardware.ts";
export * from "./cutting/index.ts";
export { JobPlanner, type PlanOptions } from "./job-planner.ts";
export { patched } from "./patched.ts";
export { plan, planWindow } from "./plan.ts";
export * from "./plan-types.ts";
export { isWithinFields, proveRemedies, RemedyTrial } from "./remedies/index.ts";
export { figuresOf } from "./shade-planner.ts";
