import type { RuleOutcome } from "../../shade-plan/index.ts";
import { lengthText, massText, trimmed, type UnitChoice } from "../../units/index.ts";
import { counted } from "../../words/index.ts";
import type { Check, Comparison, Rule, RuleUnit } from "../rules/rule.ts";

const NBSP = " ";

/** A length as the rules give it, with the maker's own reading first where that is in inches. */
export function mmText(lengthMm: number, units: UnitChoice, decimals = 0): string {
  // Heights of letters and bores of gauges are too fine for whole millimetres.
  const fine = lengthMm < 50 && !Number.isInteger(lengthMm) ? Math.max(decimals, 1) : decimals;
  const metric = `${trimmed(lengthMm, fine)}${NBSP}mm`;
  return units.ruler === "1 mm" || lengthMm < 10 ? metric : `${lengthText(lengthMm, units)} (${metric})`;
}

/** What a rule asks: a text that was read in its own units, a limit of our own in those of the job. */
export function ruleWords({ words, confidence }: Rule, units: UnitChoice): string {
  if (confidence !== "ours") return words;
  return words.replace(/(\d+) mm\b/g, (_, mm: string) => mmText(Number(mm), units));
}

interface ValueAndLimit {
  valueText?: string;
  limitText?: string;
}

const LIMIT_WORDS: Record<Comparison, string> = {
  "at-most": "at most ",
  below: "less than ",
  "at-least": "at least ",
  equals: "",
};

/** Value and limit so that a difference between them can be seen. */
export function valueAndLimit(
  { comparison, unit }: Check,
  value: number | undefined,
  limit: number | undefined,
  units: UnitChoice,
): ValueAndLimit {
  const near = value !== undefined && limit !== undefined && Math.abs(value - limit) < 1 && value !== limit;
  const decimals = near ? 2 : 0;
  return {
    ...(value === undefined ? {} : { valueText: amountText(value, unit, units, decimals) }),
    ...(limit === undefined
      ? {}
      : { limitText: `${LIMIT_WORDS[comparison]}${amountText(limit, unit, units, decimals)}` }),
  };
}

function amountText(amount: number, unit: RuleUnit, units: UnitChoice, decimals: number): string {
  switch (unit) {
    case "mm":
      return mmText(amount, units, decimals);
    case "kg":
      return massText(amount, units);
    case "mg/kg":
      return `${trimmed(amount, 0)}${NBSP}mg/kg`;
    case "count":
      return trimmed(amount, 0);
    case "yes-no":
      return amount === 0 ? "no" : "yes";
  }
}

export function raiseText(raise: number): string {
  if (raise <= 0) return "fully lowered";
  if (raise >= 1) return "fully raised";
  return `raised by ${Math.round(raise * 100)}${NBSP}%`;
}

export function upperFirst(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** `3 rules failed`, `1 is not proven`. */
export function outcomeCountText(count: number, outcome: RuleOutcome): string {
  const one = count === 1;
  switch (outcome) {
    case "failed":
      return `${counted(count, "rule")} failed`;
    case "not-proven":
      return `${count} not proven`;
    case "not-shown-to-fail":
      return `${count} not shown to fail`;
    case "does-not-apply":
      return `${count} ${one ? "does" : "do"} not apply`;
  }
}
