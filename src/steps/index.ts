export { planSteps } from "./plan-steps.ts";
export type { StepInput } from "./step-input.ts";
