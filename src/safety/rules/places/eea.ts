import { EN_13120_RULES } from "../en-13120.ts";
import type { PlaceRules } from "../rule.ts";
import { EU_RULES } from "./eu.ts";

/** Iceland, Liechtenstein, Norway and Switzerland: the standards are the same; their laws were not read. */
export const EEA_RULES = {
  place: "eea",
  whom: "EN 13120 is a standard of these countries too. Their own laws on what is sold or given were not read: as far as is recalled they ask for products without hazard and point to it.",
  outside: EU_RULES.outside,
  cautionFor: ["own-home"],
  rules: [
    ...EN_13120_RULES,
    {
      id: "EEA-LAW",
      words:
        "Iceland, Liechtenstein and Norway take over the European regulation on general product safety by their agreement with the Union; Switzerland has a law of its own.",
      cite: { source: "from-memory", at: "not read" },
      asOf: "undated",
      confidence: "V2",
      kind: "rule",
      status: "unverified",
      goods: "any",
      binds: [],
      note: "Recalled and not read: whether and since when it binds there is to be checked.",
    },
  ],
} as const satisfies PlaceRules;
