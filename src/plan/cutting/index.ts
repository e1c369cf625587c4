export { buyAsCut } from "./buy-as-cut.ts";
export * from "./cutting-plan.ts";
export { CuttingSearch, FIRST_TRIES, planCutting } from "./cutting-search.ts";
export { type FollowedCut, followCuts } from "./follow-cuts.ts";
export { planAndCut } from "./plan-and-cut.ts";
export { rackAfter } from "./rack-after.ts";
export { cuttingSavings, type Saving } from "./savings.ts";
