import { type Finding, lazy, type PatchOperation, type Remedy } from "../../figures/index.ts";
import { RULE_OUTCOME_NAMES, type SafetyReview } from "../../shade-plan/index.ts";
import { findingIdOf, NOT_PROVEN } from "./review-findings.ts";

/** The review of the shade planned anew with a change; undefined where there is no such shade then. */
export type ReviewAfter = (patch: readonly PatchOperation[]) => SafetyReview | undefined;

/**
 * Findings of a review with those ways out alone that lead somewhere: planned anew, the rule no longer fails, or
 * fewer rules are open, and no other rule fails that did not. Each says what it comes to. Tried when someone reads them.
 */
export function provenRemedies(
  findings: readonly Finding[],
  now: SafetyReview,
  reviewAfter: ReviewAfter,
): Finding[] {
  return findings.map((finding) => {
    const result = now.results.find(({ ruleId }) => findingIdOf(ruleId) === finding.id);
    const told =
      finding.id === NOT_PROVEN
        ? (after: SafetyReview) => fewerOpen(now, after)
        : result && ((after: SafetyReview) => outcomeText(result.ruleId, after));
    if (told === undefined) return finding;
    const remedies = lazy(() =>
      finding.remedies.flatMap((remedy): Remedy[] => {
        const after = reviewAfter(remedy.patch);
        const then = after === undefined || failsAnew(now, after) ? undefined : told(after);
        if (then === undefined) return [];
        return [
          { ...remedy, changes: [remedy.changes, then].filter((text) => text !== undefined).join(" ") },
        ];
      }),
    );
    const { remedies: _candidates, ...said } = Object.getOwnPropertyDescriptors(finding);
    return Object.defineProperties({} as Finding, {
      ...said,
      remedies: { enumerable: true, configurable: true, get: remedies },
    });
  });
}

function outcomeText(ruleId: string, { results }: SafetyReview): string | undefined {
  const outcome = results.find((result) => result.ruleId === ruleId)?.outcome;
  return outcome === undefined || outcome === "failed"
    ? undefined
    : `This rule: ${RULE_OUTCOME_NAMES[outcome]}.`;
}

function fewerOpen({ counts }: SafetyReview, { counts: after }: SafetyReview): string | undefined {
  const left = after["not-proven"];
  return left < counts["not-proven"] ? `Of these, ${left} would stay open.` : undefined;
}

function failsAnew(now: SafetyReview, after: SafetyReview): boolean {
  const failed = failedIds(now);
  return [...failedIds(after)].some((id) => !failed.has(id));
}

function failedIds({ results }: SafetyReview): Set<string> {
  return new Set(results.filter(({ outcome }) => outcome === "failed").map(({ ruleId }) => ruleId));
}
