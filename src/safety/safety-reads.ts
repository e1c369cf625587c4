import { type ReadOf, reads } from "../job/index.ts";

/** What the review of the cords, and the words about them, read of a shade. */
export const SAFETY_READS = reads({
  shade: [
    ...(["shadeId", "path", "units", "place", "purpose", "goods", "style", "existing"] as const),
    ...(["rearCords", "cloths", "board", "eye", "cord", "opening"] as const),
  ],
  making: ["lift", "fold", "hobble"],
});
export type SafetyShade = ReadOf<typeof SAFETY_READS>;
