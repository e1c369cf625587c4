import { EN_13120_RULES } from "../en-13120.ts";
import { GPSR_RULES } from "../gpsr.ts";
import type { PlaceRules } from "../rule.ts";
import { UK_GUIDANCE } from "../uk-guidance.ts";
import { GB_RULES } from "./gb.ts";

/** Northern Ireland: the European regulation on general product safety applies there as well, from 13 December 2024. */
export const NI_RULES = {
  place: "ni",
  whom: "They bind whoever places shades on the market of Northern Ireland, where the European regulation on general product safety applies from 13 December 2024. Your own window is outside that, and the hazard there is the same.",
  outside: GB_RULES.outside,
  cautionFor: GB_RULES.cautionFor,
  rules: [
    ...EN_13120_RULES,
    ...GPSR_RULES,
    ...UK_GUIDANCE,
    {
      id: "NI-GPSR",
      words: "The regulation on general product safety of the European Union applies in Northern Ireland.",
      cite: { source: "ni-gpsr-guidance" },
      asOf: "2024-12-03",
      confidence: "V1",
      kind: "rule",
      status: "in-force",
      goods: "any",
      binds: [],
      note: "Its row stands above. A maker outside Northern Ireland and the Union names a responsible person there.",
    },
  ],
} as const satisfies PlaceRules;
