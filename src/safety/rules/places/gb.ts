import { EN_13120_RULES } from "../en-13120.ts";
import type { PlaceRules } from "../rule.ts";
import { UK_GUIDANCE } from "../uk-guidance.ts";

/** Great Britain: the rows of EN 13120, published as BS EN on 28 February 2014, and the country's own guidance. */
export const GB_RULES = {
  place: "gb",
  whom: "They bind whoever designs, makes, supplies, sells or installs shades. The standards presume conformity with the General Product Safety Regulations 2005. Your own window is outside that, and the hazard there is the same.",
  outside:
    "Binds what is supplied, sold or installed, and your own window is outside it. The hazard is the same.",
  cautionFor: ["own-home"],
  rules: [...EN_13120_RULES, ...UK_GUIDANCE],
} as const satisfies PlaceRules;
