export { plan } from "./plan.ts";
export * from "./plan-types.ts";
