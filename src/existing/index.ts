export { columnsAsMeasured, gridAsMeasured } from "./as-measured.ts";
export { massAsWeighed } from "./as-weighed.ts";
export { EXISTING_READS } from "./existing-reads.ts";
export { planExisting } from "./plan-existing.ts";
