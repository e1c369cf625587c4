import { choice, count, length, number, size } from "../inputs/spec.ts";

/** Settings of the hobbled style in the maker's words. */
export const HOBBLE_FIELDS = {
  rule: choice("Folds spaced by", {
    tape: "tape and fullness",
    "folds-of-six": "the published rule, read as folds of about 6 in",
    "folds-of-three": "the published rule to the letter, folds of about 3 in",
  }),
  tapeMm: size("Tape from mark to mark", "at most"),
  fullness: number("Cloth on the tape", 1, 3, "× the tape"),
  clothMm: size("Cloth from mark to mark", "fixed; it decides the fullness"),
  match: {
    kind: "flag" as const,
    label: "Pattern comes back on the folds",
    yes: "cloth spaced for it",
    no: "falls as it comes",
  },
  repeats: count("Repeats on those folds", 1, 12, "fixed number"),
  folds: count("Comes back after so many folds", 1, 12, "fixed number"),
};

/** Settings of the stitched-tuck style in the maker's words. */
export const TUCK_FIELDS = {
  spacingMm: size("Tucks apart", "about; a whole number fills the length"),
  depthMm: length("Depth of a tuck", "fold to stitching"),
  face: choice("Tucks stand at the", { front: "front", back: "back" }),
};
