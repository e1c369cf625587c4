export { plan, planWindow } from "./plan.ts";
export * from "./plan-types.ts";
