import type { Finding, WorkingBook } from "../../figures/index.ts";
import type { ResolvedShade } from "../../job/index.ts";
import {
  RULE_OUTCOMES,
  type RuleOutcome,
  type RuleResult,
  type SafetyReview,
} from "../../shade-plan/index.ts";
import { placeText, purposeText } from "../rules/place-words.ts";
import type { PhysicalTestId } from "../rules/rule.ts";
import { type ActiveRule, type RuleSet, rulesFor } from "../rules/rules-for.ts";
import { tagHeights } from "../tag/tag-heights.ts";
import { type Evaluation, evaluate } from "./evaluate.ts";
import { judgeFoldLoop } from "./fold-loop.ts";
import { cordGeometry } from "./lift-geometry.ts";
import { physicalTest } from "./physical-tests.ts";
import { RemedyFinder } from "./remedies.ts";
import { reviewCautions } from "./review-cautions.ts";
import { failedFinding, openFinding, severityOf } from "./review-findings.ts";
import type { ReviewInput } from "./review-input.ts";
import { ResultWriter, sourceOfRule } from "./rule-results.ts";
import { countText } from "./texts.ts";

interface EvaluatedRule {
  rule: ActiveRule;
  evaluation: Evaluation;
  result: RuleResult;
}

/**
 * Holds every cord of one shade, at every height, against the rules of its place and purpose; against our own
 * caution profile where they were not said or do not bind. A rule is failed, not proven, not shown to fail, or
 * does not apply; the whole has no verdict.
 */
export function reviewShade(
  input: ReviewInput,
  book: WorkingBook,
): { review: SafetyReview; findings: Finding[] } {
  const { resolved, size } = input;
  const rules = rulesFor(resolved.place, resolved.purpose);
  const geometry = cordGeometry(input, input.lift);
  const tag = tagHeights(resolved.place);
  const situation = { geometry, tag };
  const writer = new ResultWriter(resolved, situation, size.hemAboveFloorMm, book);
  const evaluated = rules.active
    .map(({ rule, outside }): EvaluatedRule => {
      const evaluation = evaluate(rule, situation, resolved.purpose, outside);
      return { rule, evaluation, result: writer.result(rule, evaluation) };
    })
    .sort(gravestFirst);
  const review = assemble(resolved, rules, evaluated);
  return {
    review,
    findings: [
      ...findingsOf(evaluated, review, new RemedyFinder(input, geometry, tag), resolved),
      ...judgeFoldLoop(input, book),
    ],
  };
}

const KIND_ORDER = { rule: 0, standard: 1, advice: 2 } as const;
const CONFIDENCE_ORDER = { V1: 0, V2: 1, ours: 2 } as const;

/** Outcome, then laws that were read before what others say of them. */
function gravestFirst(a: EvaluatedRule, b: EvaluatedRule): number {
  return (
    RULE_OUTCOMES.indexOf(a.result.outcome) - RULE_OUTCOMES.indexOf(b.result.outcome) ||
    KIND_ORDER[a.rule.kind] - KIND_ORDER[b.rule.kind] ||
    CONFIDENCE_ORDER[a.rule.confidence] - CONFIDENCE_ORDER[b.rule.confidence]
  );
}

function assemble(
  resolved: ResolvedShade,
  rules: RuleSet,
  evaluated: readonly EvaluatedRule[],
): SafetyReview {
  const results = evaluated.map(({ result }) => result);
  const counts = countsOf(results);
  const stops = evaluated.filter(
    ({ rule, result }) => result.outcome === "failed" && severityOf(rule, resolved) === "stop",
  );
  const stamp = stops.length > 0;
  return {
    ...(resolved.place === undefined ? {} : { place: resolved.place }),
    ...(resolved.purpose === undefined ? {} : { purpose: resolved.purpose }),
    profile: rules.profile,
    readAs: rules.readAs,
    line: lineOf(resolved, rules, counts, results[0]),
    counts,
    results,
    listed: rules.listed.map(sourceOfRule),
    tests: testIds(evaluated).map((id) => physicalTest(id, resolved.units)),
    cautions: reviewCautions(resolved),
    stamp,
    ...(stamp ? { stampText: stampText(resolved, stops) } : {}),
  };
}

function countsOf(results: readonly RuleResult[]): Record<RuleOutcome, number> {
  const counts = { failed: 0, "not-proven": 0, "not-shown-to-fail": 0, "does-not-apply": 0 };
  for (const { outcome } of results) counts[outcome]++;
  return counts;
}

function lineOf(
  resolved: ResolvedShade,
  { profile }: RuleSet,
  counts: Record<RuleOutcome, number>,
  heaviest: RuleResult | undefined,
): string {
  const counted = RULE_OUTCOMES.filter((outcome) => counts[outcome] > 0).map((outcome) =>
    countText(counts[outcome], outcome),
  );
  const first =
    heaviest?.outcome === "failed" || heaviest?.outcome === "not-proven"
      ? ` The heaviest, ${heaviest.outcome === "failed" ? "failed" : "not proven"}: ${heaviest.words}`
      : "";
  return `${againstText(resolved, profile)}: ${counted.join(", ")}.${first}`;
}

function againstText({ place, purpose }: ResolvedShade, profile: SafetyReview["profile"]): string {
  if (place === undefined || purpose === undefined || profile === "caution") {
    return "Read against our own caution profile, which is no place’s law";
  }
  const beside = profile === "place" ? "" : " and our own caution profile";
  return `Read against the rules of ${placeText(place)}, ${purposeText(purpose)}${beside}`;
}

function stampText({ place }: ResolvedShade, stops: readonly EvaluatedRule[]): string {
  const ids = stops.map(({ rule }) => rule.id).join(", ");
  const where = place === undefined ? "" : ` in ${placeText(place)}`;
  return `${stops.length === 1 ? "A rule" : `${stops.length} rules`} on cords failed${where}: ${ids}. Do not sell, give away or install this shade as it is planned.`;
}

/** Tests that open results ask for, each once, those of the cords first. */
function testIds(evaluated: readonly EvaluatedRule[]): PhysicalTestId[] {
  const ids = new Set<PhysicalTestId>();
  for (const { rule, result } of evaluated)
    if (result.test !== undefined && rule.check.test) ids.add(rule.check.test);
  return [...ids];
}

function findingsOf(
  evaluated: readonly EvaluatedRule[],
  review: SafetyReview,
  remedies: RemedyFinder,
  resolved: ResolvedShade,
): Finding[] {
  const failed = evaluated.filter(({ result }) => result.outcome === "failed");
  const open = evaluated.filter(({ result }) => result.outcome === "not-proven");
  return [
    ...failed.map(({ rule, evaluation, result }) =>
      failedFinding(resolved, rule, result, remedies.of(rule.check, evaluation)),
    ),
    ...openFinding(
      resolved,
      open.map(({ result }) => result),
      review.tests.map(({ title }) => title),
      remedies.ofOpen(open.map(({ rule }) => rule.check)),
    ),
  ];
}
