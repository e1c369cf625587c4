export { GIVEN_SIZE } from "./given-size.ts";
export { measure } from "./measure.ts";
export { MEASURE_READS } from "./measure-reads.ts";
