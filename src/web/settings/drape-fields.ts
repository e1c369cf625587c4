import { choice, count, length, number, size } from "../inputs/spec.ts";

/** Settings of the relaxed style in the maker's words. */
export const RELAX_FIELDS = {
  dipMm: length("Lower edge dips by", "in the middle; the width follows from it"),
  extraWidthMm: length("Wider at the hem by", "the dip follows from it"),
  lowerEdge: choice("Lower edge", {
    curved: "cut to the dip, which always shows",
    straight: "cut straight, dips when raised",
  }),
  widening: choice("Width grows", {
    tapered: "from the board down to the hem",
    even: "all the way, eased in at the board",
  }),
  weight: choice("In the hem", {
    none: "nothing",
    "at-columns": "short weights at the columns",
    bar: "a bar, which lets nothing dip",
  }),
};

/** Settings of pleats in the maker's words. */
export const PLEAT_FIELDS = {
  foldedMm: length("Cloth in one pleat"),
  kind: choice("Pleats", {
    inverted: "inverted, edges meet at the front",
    box: "box, edges meet at the back",
  }),
  held: choice("Pleats are", {
    sewn: "sewn shut nearly to the hem",
    pressed: "sewn at the top, pressed below",
  }),
  sewnAtTopMm: length("Sewn at the top", "below the top line"),
  openAtHemMm: length("Open at the hem", "where they are sewn shut"),
  insetMm: length("Pleats in from the edges", "tailed"),
  insetShare: number("Pleats in from the edges", 0, 0.5, "× the width", "tailed"),
  cut: choice("Pleats cut", { "in-one": "in one with the panel", inserts: "apart, and joined in" }),
  poufMm: size("Poufs at most wide", "pleated balloon"),
  edges: choice("At the edges", { half: "half a pleat", none: "no pleat" }, "pleated balloon"),
  firstRingMm: length("First rings above the edge"),
  bar: choice("Weight bar", { none: "none", between: "between the pleats alone" }),
  centreLine: {
    kind: "flag" as const,
    label: "Lift line in the middle",
    yes: "one, so that the centre cannot droop",
    no: "none",
  },
};

/** Settings of a pouf that stays when the shade is down. */
export const POUF_FIELDS = {
  marks: count("Marks tied at the lowest ring", 0, 6, "2 or 3; under 2 for none"),
  clothMm: length("Cloth in the pouf", "stays up with the shade down"),
};
