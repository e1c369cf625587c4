export { COST_READS, type CostInput, type NeedsInput } from "./cost-input.ts";
export { hardwareNeeds } from "./hardware-needs.ts";
export { CLOTH_SHORT, judgeStockAsCut } from "./judge-cost.ts";
export { soldLengths } from "./length-for.ts";
export { type LengthsNeed, labelOf, type RunningNeed } from "./need.ts";
export { planCost, type ShadeCost } from "./plan-cost.ts";
export { type ClothTaken, type LengthsTaken, priceAsCut } from "./price-as-cut.ts";
export { boughtLengthMm } from "./sold.ts";
export { CostSum, type JobCostInput, sumCosts } from "./sum-costs.ts";
