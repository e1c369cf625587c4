export type { CostInput } from "./cost-input.ts";
export { planCost, type ShadeCost } from "./plan-cost.ts";
export { type JobTerms, sumCosts } from "./sum-costs.ts";
