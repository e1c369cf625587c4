import type { Finding } from "../../figures/index.ts";
import { RULE_OUTCOME_NAMES, type SafetyReview } from "../../shade-plan/index.ts";
import { findingIdOf, NOT_PROVEN } from "./review-findings.ts";

/** What the review of a shade comes to for one of its findings, said of a change; undefined where it says nothing of it. */
export function comesToText({ id }: Finding, { counts, results }: SafetyReview): string | undefined {
  if (id === NOT_PROVEN) return `Of these, ${counts["not-proven"]} would stay open.`;
  const result = results.find(({ ruleId }) => findingIdOf(ruleId) === id);
  return result && `This rule: ${RULE_OUTCOME_NAMES[result.outcome]}.`;
}
