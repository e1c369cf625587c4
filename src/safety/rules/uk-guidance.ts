import { BUTTON_CELL_CHECK } from "./button-cells.ts";
import type { Rule } from "./rule.ts";

/** What the United Kingdom’s own agencies and tutorials add to EN 13120. */
export const UK_GUIDANCE = [
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
  {
    id: "UK-BUTTON",
    words:
      "A remote control that holds button or coin cells keeps to the published specification on them; regulators look at it when they judge whether goods are without hazard.",
    cite: { source: "uk-pas-7055" },
    asOf: "2021-04",
    confidence: "V2",
    kind: "advice",
    status: "voluntary-standard",
    goods: "any",
    binds: ["gift", "for-sale", "public-building"],
    check: BUTTON_CELL_CHECK,
  },
] as const satisfies readonly Rule[];
