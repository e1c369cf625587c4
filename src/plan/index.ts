export * from "./choose-hardware.ts";
export * from "./cutting/index.ts";
export type { LinedRoom } from "./line-room.ts";
export { patched } from "./patched.ts";
export { type PlanOptions, plan, planRoom, planWindow } from "./plan.ts";
export * from "./plan-types.ts";
export * from "./remedies/index.ts";
