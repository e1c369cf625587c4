import { choice, length, number } from "../inputs/spec.ts";

/** Settings of the gathered and shirred styles in the maker's words. */
export const GATHER_FIELDS = {
  lengthFullness: number("Cloth along the length", 1, 5, "× the length", "Austrian"),
  widthFullness: number("Cloth across", 1, 5, "× the width", "gathered balloon and festoon"),
  scallopExtraMm: length("Cloth across a scallop, beyond its width", "Austrian; 3 to 4 in are published"),
  sagMm: length("Scallop hangs by", "Austrian; the cloth across follows from it"),
  hemExtraMm: length("Cloth drawn up at the hem", "gathered balloon and festoon, shade lowered"),
  hemRowMm: length("Lowest rings above the edge", "gathered balloon and festoon"),
  drawInMm: length("More width for sides that draw in", "both sides together"),
  weight: choice("Lower edge held by", {
    rod: "a covered rod",
    "shot-bags": "a bag of shot at each column",
    none: "nothing",
  }),
  frillMm: length("Frill", "its depth; 0 for none"),
  frillEdges: choice("Frill round", {
    hem: "the lower edge",
    sides: "both sides",
    "sides-and-hem": "both sides and the lower edge",
  }),
  frillDouble: {
    kind: "flag" as const,
    label: "Frill made",
    yes: "double, folded lengthwise",
    no: "single, hemmed along both edges",
  },
  frillFullness: number("Frill", 1, 5, "× the edge it is sewn to"),
};
