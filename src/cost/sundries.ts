import { DEFAULT_CUTTING } from "../job/index.ts";
import { cite, sourced } from "../sources/index.ts";

/** What a shade uses of the small things, for the shopping list. */
export const SUNDRIES = {
  /** A lockstitch takes about three times the length of its seam. */
  threadPerSeam: sourced(3, "ratio", cite("from-memory", "2.5 to 3 times the seam for a lockstitch")),
  threadPerRingMm: sourced(500, "mm", cite("our-choice", "five stitches and the ends")),
  threadSpoolMm: sourced(100_000, "mm", cite("our-choice", "a household spool")),
  stapleSpacingMm: sourced(40, "mm", cite("common-practice", "about 1 1/2 in")),
  /** Once for the board's cover, once for the shade. */
  stapleRows: sourced(2, "count", cite("common-practice")),
  staplesPerBox: sourced(1000, "count", cite("our-choice")),
  sawKerfMm: DEFAULT_CUTTING.sawKerfMm,
} as const;
