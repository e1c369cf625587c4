import { type ReadOf, reads } from "../job/index.ts";

/** What measuring reads of a shade. */
export const MEASURE_READS = reads({
  shade: ["shadeId", "path", "units", "style", "mount", "opening", "window", "liftKind", "board"],
  making: ["mount"],
});
export type MeasuredShade = ReadOf<typeof MEASURE_READS>;
