import { EN_13120_RULES } from "../en-13120.ts";
import { GPSR_RULES } from "../gpsr.ts";
import type { PlaceRules } from "../rule.ts";

/** European Union: EN 13120 and its neighbours, voluntary standards that presume conformity. */
export const EU_RULES = {
  place: "eu",
  whom: "They bind whoever places shades on the market where children of up to 42 months are likely, or where it is not known where the shade will hang. Your own window is outside it as far as is recalled, and the hazard there is the same.",
  outside:
    "Binds what is placed on the market, and your own window is outside it as far as is recalled. The hazard is the same.",
  cautionFor: ["own-home"],
  rules: [
    ...EN_13120_RULES,
    ...GPSR_RULES,
    {
      id: "EU-LIST-2026",
      words: "The list of standards that presume conformity was replaced on 17 April 2026.",
      cite: { source: "eu-2026-901" },
      asOf: "2026-04-17",
      confidence: "V1",
      kind: "rule",
      status: "unverified",
      goods: "any",
      binds: [],
      note: "Whether EN 13120, EN 16433 and EN 16434 are still on it could not be read. Check the current list.",
    },
  ],
} as const satisfies PlaceRules;
