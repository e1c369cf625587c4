import { EN_13120_RULES } from "../en-13120.ts";
import type { PlaceRules } from "../rule.ts";

/** United Kingdom: the rows of EN 13120, published as BS EN on 28 February 2014, and the country's own guidance. */
export const GB_RULES = {
  place: "gb",
  whom: "They bind whoever designs, makes, supplies, sells or installs shades. The standards presume conformity with the General Product Safety Regulations 2005. Your own window is outside that, and the hazard there is the same.",
  outside:
    "Binds what is supplied, sold or installed, and your own window is outside it. The hazard is the same.",
  cautionFor: ["own-home"],
  rules: [
    ...EN_13120_RULES,
    {
      id: "UK-SECURED",
      words:
        "Cords end at least 1.5 m above the floor and are held by a device that meets the standard as well.",
      cite: { source: "uk-rospa" },
      asOf: "undated",
      confidence: "V2",
      kind: "standard",
      status: "voluntary-standard",
      goods: "any",
      binds: ["gift", "for-sale", "public-building"],
      check: {
        quantity: "secured-by-device",
        comparison: "at-least",
        limit: 1500,
        unit: "mm",
        states: "all",
        test: "wind-on-cleat",
      },
    },
    {
      id: "UK-LOWLOOP",
      words: "On a low window an operating loop that hangs below 1.5 m is at most 20 cm long.",
      cite: { source: "uk-rospa" },
      asOf: "undated",
      confidence: "V2",
      kind: "advice",
      status: "guidance",
      goods: "any",
      binds: ["own-home", "gift", "for-sale", "public-building"],
      check: {
        quantity: "operating-loop-length",
        comparison: "at-most",
        limit: 200,
        unit: "mm",
        states: "all",
        belowFloorMm: 1500,
      },
    },
    {
      id: "UK-TAIL",
      words:
        "Wound on a cleat at least 1.5 m above the floor, only a single cord of at most 20 cm hangs below it.",
      cite: { source: "uk-tutorial" },
      asOf: "undated",
      confidence: "V2",
      kind: "advice",
      status: "guidance",
      goods: "any",
      binds: ["own-home", "gift", "for-sale", "public-building"],
      check: {
        quantity: "tail-below-cleat",
        comparison: "at-most",
        limit: 200,
        unit: "mm",
        states: "raised",
        test: "wind-on-cleat",
      },
    },
  ],
} as const satisfies PlaceRules;
