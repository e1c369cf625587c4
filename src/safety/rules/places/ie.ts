import type { PlaceRules } from "../rule.ts";
import { EU_RULES } from "./eu.ts";

/** Ireland: the rows of the European Union and the guidance of the country's own standards body. */
export const IE_RULES = {
  place: "ie",
  whom: EU_RULES.whom,
  outside: EU_RULES.outside,
  cautionFor: EU_RULES.cautionFor,
  rules: [
    ...EU_RULES.rules,
    {
      id: "IE-END",
      words: "Cords end at least 1.6 m above the ground.",
      cite: { source: "ie-nsai" },
      asOf: "undated",
      confidence: "V1",
      kind: "advice",
      status: "guidance",
      goods: "any",
      binds: ["own-home", "gift", "for-sale", "public-building"],
      check: {
        quantity: "cord-low-point",
        comparison: "at-least",
        limit: 1600,
        unit: "mm",
        states: "all",
      },
    },
  ],
} as const satisfies PlaceRules;
