export { measure } from "./measure.ts";
export { MEASURE_READS } from "./measure-reads.ts";
