export { acrossRepeatMm, firstColumnMm } from "./place-motif.ts";
export { planCloth } from "./plan-cloth.ts";
