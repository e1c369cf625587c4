import type { Purpose } from "../../job/index.ts";
import type { RuleOutcome } from "../../shade-plan/index.ts";
import { SAME_LENGTH_MM } from "../../units/index.ts";
import type { Check, Comparison, Rule } from "../rules/rule.ts";
import { unmetCondition } from "./conditions.ts";
import { type Measurement, measure, pulledMm } from "./measures.ts";
import type { Situation } from "./quantities/quantity.ts";

export interface Evaluation {
  outcome: RuleOutcome;
  /** Why the rule does not apply. */
  why?: string;
  measurement?: Measurement;
  limit?: number;
}

const STOCK_ONLY = "Written for stock goods. A shade that is made for one window is custom-made.";

/** Holds one rule against one shade. `outside` says why the place’s rules leave a purpose out. */
export function evaluate(
  rule: Rule & { check: Check },
  situation: Situation,
  purpose: Purpose | undefined,
  outside: string,
): Evaluation {
  if (purpose !== undefined && !rule.binds.includes(purpose)) return notApplying(outside);
  if (rule.goods === "stock") return notApplying(STOCK_ONLY);
  return evaluateCheck(rule.check, situation);
}

/** What the numbers alone say, whomever the rule binds. */
export function evaluateCheck(check: Check, situation: Situation): Evaluation {
  const measurement = measure(situation, check);
  if ("absent" in measurement) return notApplying(measurement.absent);
  const { geometry } = situation;
  const unmet = unmetCondition(check.when, geometry);
  if (unmet !== undefined) return notApplying(unmet);
  const limit =
    typeof check.limit === "object"
      ? check.limit.blindHeightShare * geometry.blindHeightMm + check.limit.plusMm
      : check.limit;
  return {
    outcome: judge(check, measurement, limit, situation),
    measurement,
    ...(limit === undefined ? {} : { limit }),
  };
}

function notApplying(why: string): Evaluation {
  return { outcome: "does-not-apply", why };
}

function judge(
  check: Check,
  measurement: Measurement,
  limit: number | undefined,
  situation: Situation,
): RuleOutcome {
  const { value, over, within } = measurement;
  if (value === undefined || limit === undefined) return "not-proven";
  if (violates(value, check.comparison, limit)) return over;
  if (within === "not-proven") return within;
  const pulled = pulledMm(situation, check, measurement);
  return pulled !== undefined && violates(pulled, check.comparison, limit) ? "not-proven" : within;
}

/** At the limit itself `at most` and `at least` hold, `below` does not; a hair of arithmetic decides nothing. */
export function violates(value: number, comparison: Comparison, limit: number): boolean {
  switch (comparison) {
    case "at-most":
      return value > limit + SAME_LENGTH_MM;
    case "at-least":
      return value < limit - SAME_LENGTH_MM;
    case "below":
      return value > limit - SAME_LENGTH_MM;
    case "equals":
      return value !== limit;
  }
}
