import type { PlaceRules } from "../rule.ts";

/**
 * The caution profile: for places whose rules were not read, for what is not said, and for your own home.
 * The rows of all places rounded down by us. Not a legal limit, and nobody has proved it.
 */
export const ELSEWHERE_RULES = {
  place: "elsewhere",
  whom: "Our own rounding down of the rows of all places: not a legal limit and not proven by anyone. Read the rules in force where the shade will hang.",
  outside: "The caution profile is read for everyone.",
  cautionFor: [],
  rules: [
    {
      id: "CAUTION-FREE",
      words: "A cord with a free end that can be reached is at most 200 mm long.",
      cite: { source: "our-choice", at: "caution profile: rows of all places rounded down" },
      asOf: "2026-04",
      confidence: "ours",
      kind: "advice",
      status: "guidance",
      goods: "any",
      binds: ["own-home", "gift", "for-sale", "public-building"],
      check: {
        quantity: "free-cord-length",
        comparison: "at-most",
        limit: 200,
        unit: "mm",
        pullN: 35,
        states: "all",
      },
    },
    {
      id: "CAUTION-LOOP",
      words: "No loop that is there, or that a child’s pull of 35 N makes, is more than 400 mm around.",
      cite: { source: "our-choice", at: "caution profile: rows of all places rounded down" },
      asOf: "2026-04",
      confidence: "ours",
      kind: "advice",
      status: "guidance",
      goods: "any",
      binds: ["own-home", "gift", "for-sale", "public-building"],
      check: {
        quantity: "loop-perimeter",
        comparison: "at-most",
        limit: 400,
        unit: "mm",
        pullN: 35,
        states: "all",
        test: "pull-rear-cords",
      },
    },
    {
      id: "CAUTION-GUIDE",
      words: "The guides of rear cords are at most 200 mm apart.",
      cite: { source: "our-choice", at: "caution profile: rows of all places rounded down" },
      asOf: "2026-04",
      confidence: "ours",
      kind: "advice",
      status: "guidance",
      goods: "any",
      binds: ["own-home", "gift", "for-sale", "public-building"],
      check: {
        quantity: "rear-guide-spacing",
        comparison: "at-most",
        limit: 200,
        unit: "mm",
        states: "all",
      },
    },
    {
      id: "CAUTION-CLEAT",
      words: "A cleat is at least 1600 mm above the floor.",
      cite: { source: "our-choice", at: "caution profile: rows of all places rounded down" },
      asOf: "2026-04",
      confidence: "ours",
      kind: "advice",
      status: "guidance",
      goods: "any",
      binds: ["own-home", "gift", "for-sale", "public-building"],
      check: {
        quantity: "cleat-height",
        comparison: "at-least",
        limit: 1600,
        unit: "mm",
        states: "all",
      },
    },
  ],
} as const satisfies PlaceRules;
