export { CLOTH_READS, MASS_READS } from "./cloth-input.ts";
export { planMass } from "./mass.ts";
export { acrossRepeatMm, firstColumnMm } from "./place-motif.ts";
export { planCloth } from "./plan-cloth.ts";
