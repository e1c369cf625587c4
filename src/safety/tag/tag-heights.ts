import type { Place } from "../../job/index.ts";
import { type Cite, cite } from "../../sources/index.ts";
import { PLACE_RULES } from "../rules/place-rules.ts";
import { isActive, type Quantity } from "../rules/rule.ts";

/** Least heights of letters on a tag, mm, and the rule that asks for them. */
export interface TagLetters {
  signalMm: number;
  textMm: number;
  cite: Cite;
}

/** Where the place asks for none: the largest that any place asks for. */
const ANYWHERE: TagLetters = {
  signalMm: 5,
  textMm: 2.5,
  cite: cite("our-choice", "as Canada asks, which asks for the largest letters"),
};

export function tagHeights(place: Place | undefined): TagLetters {
  if (place === undefined) return ANYWHERE;
  const signal = asked(place, "signal-word-height");
  const text = asked(place, "warning-text-height");
  if (signal === undefined || text === undefined) return ANYWHERE;
  return { signalMm: signal.mm, textMm: text.mm, cite: signal.cite };
}

function asked(place: Place, quantity: Quantity): { mm: number; cite: Cite } | undefined {
  for (const rule of PLACE_RULES[place].rules) {
    if (isActive(rule) && rule.check.quantity === quantity && typeof rule.check.limit === "number") {
      return { mm: rule.check.limit, cite: rule.cite };
    }
  }
  return undefined;
}
