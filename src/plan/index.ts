export * from "./cutting/index.ts";
export * from "./choose-hardware.ts";
export type { LinedRoom } from "./line-room.ts";
export { plan, planRoom, planWindow } from "./plan.ts";
export * from "./plan-types.ts";
