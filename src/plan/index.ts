export type { AlignedRoom } from "./align-room.ts";
export * from "./choose-hardware.ts";
export * from "./cutting/index.ts";
export { type PlanOptions, plan, planRoom, planWindow } from "./plan.ts";
export * from "./plan-types.ts";
