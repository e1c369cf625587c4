export { type CautionInput, planCautions } from "./plan-cautions.ts";
