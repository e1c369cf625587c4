import {
  RULE_OUTCOMES,
  type RuleOutcome,
  type RuleResult,
  type SafetyReview,
} from "../../shade-plan/index.ts";
import { placeWithArticle, purposeText } from "../rules/place-words.ts";
import type { SafetyShade } from "../safety-reads.ts";
import { isForOthers } from "./review-findings.ts";
import { outcomeCountText } from "./texts.ts";

/** Where and for whom the shade is. */
type AnswersFor = Pick<SafetyShade, "place" | "purpose">;

/** The answer, and what to do first. */
export function reviewLine(
  shade: AnswersFor,
  { failed, "not-proven": open }: Record<RuleOutcome, number>,
): string {
  if (failed > 0) {
    const rules = failed === 1 ? "a rule" : `${failed} rules`;
    const doThis = isForOthers(shade)
      ? "Change it before it is sold, given or hung"
      : "Change it, or do not hang it where children live or visit";
    return `As it is planned this shade fails ${rules} on cords. ${doThis}: what would answer each stands beside its finding.`;
  }
  if (open > 0) {
    const rules = open === 1 ? "one rule is" : `${open} rules are`;
    return `No rule that was read is shown to fail, and ${rules} not proven: do the tests of the review before it is used.`;
  }
  return "No rule that was read is shown to fail.";
}

/** What it was read against, how many rules came out how, and the heaviest. */
export function againstText(
  { place, purpose }: AnswersFor,
  { profile }: Pick<SafetyReview, "profile">,
  counts: Record<RuleOutcome, number>,
  heaviest: Pick<RuleResult, "words"> | undefined,
): string {
  const counted = RULE_OUTCOMES.filter((outcome) => counts[outcome] > 0).map((outcome) =>
    outcomeCountText(counts[outcome], outcome),
  );
  const beside = profile === "place" ? "" : " and our own caution profile";
  const rules =
    place === undefined || purpose === undefined || profile === "caution"
      ? "our own caution profile, which is no place’s law"
      : `the rules of ${placeWithArticle(place)}, ${purposeText(purpose)}${beside}`;
  const speaks = counts.failed + counts["not-proven"] > 0 && heaviest !== undefined;
  return `Read against ${rules}: ${counted.join(", ")}.${speaks ? ` The heaviest: ${heaviest.words}` : ""}`;
}

/** What is printed across each page where rules stop it. */
export function stampText({ place }: AnswersFor, stops: number): string {
  const where = place === undefined ? "" : ` of ${placeWithArticle(place)}`;
  const rules = stops === 1 ? "a rule" : `${stops} rules`;
  return `Do not sell, give away or install this shade as it is planned: its cords fail ${rules}${where}.`;
}
