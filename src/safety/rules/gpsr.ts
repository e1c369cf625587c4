import type { Rule } from "./rule.ts";

/** The European regulation on general product safety: what whoever sells or gives keeps, prints and says. */
export const GPSR_RULES = [
  {
    id: "EU-GPSR",
    words:
      "The maker’s name, postal and electronic address and a type, batch or serial number are on the shade or its papers; warnings and instructions are in the language of the place; an online offer shows the same; a risk analysis and technical documentation are kept for 10 years.",
    cite: { source: "eu-2023-988" },
    asOf: "2024-12",
    confidence: "V2",
    kind: "rule",
    status: "in-force",
    goods: "any",
    binds: ["gift", "for-sale", "public-building"],
    check: {
      quantity: "warnings-and-labels",
      comparison: "equals",
      limit: 1,
      unit: "yes-no",
      states: "all",
      test: "labels",
    },
    note: "A maker outside the Union names a responsible person inside it. What is supplied in trade counts, paid for or not.",
  },
] as const satisfies readonly Rule[];
