import { cite, sourced } from "../sources/index.ts";

/** Clear opening of a screw eye, as a share of its outside diameter. */
export const EYE_OPENING = sourced(
  0.6,
  "ratio",
  cite("from-memory", "the wire of a screw eye is about a fifth of its outside diameter"),
);

/** Wood kept beyond an eye at the end of a board, so that it does not split, mm. */
export const EYE_FROM_END_MM = 6;
