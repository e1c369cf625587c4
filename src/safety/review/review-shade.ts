import type { Finding, StageResult } from "../../figures/index.ts";
import {
  type PhysicalTestId,
  RULE_OUTCOMES,
  type RuleOutcome,
  type RuleResult,
  type SafetyReview,
} from "../../shade-plan/index.ts";
import { judgeCords } from "../judge-cords.ts";
import { type ActiveRule, type RuleSet, rulesFor } from "../rules/rules-for.ts";
import type { SafetyShade } from "../safety-reads.ts";
import { tagHeights } from "../tag/tag-heights.ts";
import { type Evaluation, evaluate } from "./evaluate.ts";
import { judgeFoldLoop } from "./fold-loop.ts";
import { judgeFire } from "./judge-fire.ts";
import { judgeHeights } from "./judge-heights.ts";
import { judgeNeighbours } from "./judge-neighbours.ts";
import { cordGeometry } from "./lift-geometry.ts";
import { physicalTest } from "./physical-tests.ts";
import { RemedyFinder } from "./remedies.ts";
import { reviewCautions } from "./review-cautions.ts";
import { failedFinding, openFinding, severityOf } from "./review-findings.ts";
import type { ReviewInput } from "./review-input.ts";
import { againstText, reviewLine, stampText } from "./review-words.ts";
import { ResultWriter, sourceOfRule } from "./rule-results.ts";

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
export function reviewShade(input: ReviewInput): StageResult<SafetyReview> {
  const { shade, size } = input;
  const rules = rulesFor(shade.place, shade.purpose);
  const geometry = cordGeometry(input, input.lift);
  const tag = tagHeights(shade.place);
  const situation = { geometry, tag };
  const writer = new ResultWriter(shade, situation, size.hemAboveFloorMm);
  const evaluated = rules.active
    .map(({ rule, outside }): EvaluatedRule => {
      const evaluation = evaluate(rule, situation, shade, outside);
      return { rule, evaluation, result: writer.result(rule, evaluation) };
    })
    .sort(gravestFirst);
  const review = assemble(input, rules, evaluated);
  const foldLoop = judgeFoldLoop(input);
  return {
    values: review,
    findings: [
      ...findingsOf(evaluated, review, new RemedyFinder(input, geometry, tag), shade),
      ...foldLoop.findings,
      ...judgeCords(input),
      ...judgeHeights(input, geometry),
      ...judgeNeighbours(input),
      ...judgeFire(input),
    ],
    workings: [...writer.workings, ...foldLoop.workings],
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
  { shade, lift }: ReviewInput,
  rules: RuleSet,
  evaluated: readonly EvaluatedRule[],
): SafetyReview {
  const results = evaluated.map(({ result }) => result);
  const counts = countsOf(results);
  const stops = evaluated.filter(
    ({ rule, result }) => result.outcome === "failed" && severityOf(rule, shade) === "stop",
  );
  const stamp = stops.length > 0;
  return {
    ...(shade.place === undefined ? {} : { place: shade.place }),
    ...(shade.purpose === undefined ? {} : { purpose: shade.purpose }),
    profile: rules.profile,
    readAs: rules.readAs,
    line: reviewLine(shade, counts),
    against: againstText(shade, rules, counts, results[0]),
    counts,
    results,
    listed: rules.listed.map(sourceOfRule),
    tests: testIds(evaluated).map((id) => physicalTest(id, shade.units)),
    cautions: reviewCautions(shade, lift),
    stamp,
    ...(stamp ? { stampText: stampText(shade, stops.length) } : {}),
  };
}

function countsOf(results: readonly RuleResult[]): Record<RuleOutcome, number> {
  const counts = { failed: 0, "not-proven": 0, "not-shown-to-fail": 0, "does-not-apply": 0 };
  for (const { outcome } of results) counts[outcome]++;
  return counts;
}

/** Tests that open results ask for, each once, those of the cords first. */
function testIds(evaluated: readonly EvaluatedRule[]): PhysicalTestId[] {
  return [
    ...new Set(
      evaluated.flatMap(({ result }) => [...(result.test ? [result.test] : []), ...(result.alsoTests ?? [])]),
    ),
  ];
}

function findingsOf(
  evaluated: readonly EvaluatedRule[],
  review: SafetyReview,
  remedies: RemedyFinder,
  shade: SafetyShade,
): Finding[] {
  const failed = evaluated.filter(({ result }) => result.outcome === "failed");
  const open = evaluated.filter(({ result }) => result.outcome === "not-proven");
  return [
    ...failed.map(({ rule, evaluation, result }) =>
      failedFinding(shade, rule, result, () => remedies.of(rule.check, evaluation)),
    ),
    ...openFinding(
      shade,
      open.map(({ result }) => result),
      review.tests.map(({ title }) => title),
      () => remedies.ofOpen(open.map(({ rule }) => rule.check)),
    ),
  ];
}
