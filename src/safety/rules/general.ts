import type { Rule } from "./rule.ts";

/** What agencies advise everyone, wherever a shade hangs. */
export const GENERAL_RULES = [
  {
    id: "GEN-CORDLESS",
    words: "Where children live or visit, no cord can be reached at the front, at the sides or at the back.",
    cite: { source: "cordless-advice" },
    asOf: "2021-10",
    confidence: "V2",
    kind: "advice",
    status: "guidance",
    goods: "any",
    binds: ["own-home", "gift", "for-sale", "public-building"],
    check: {
      quantity: "accessible-cords",
      comparison: "at-most",
      limit: 0,
      unit: "count",
      states: "all",
    },
  },
] as const satisfies readonly Rule[];
