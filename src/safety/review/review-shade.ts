import type { Finding, WorkingBook } from "../../figures/index.ts";
import type { Brief } from "../../job/index.ts";
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
import { WaysOut } from "./remedies.ts";
import { reviewCautions } from "./review-cautions.ts";
import { failedFinding, openFinding, weightOf } from "./review-findings.ts";
import type { ReviewInput } from "./review-input.ts";
import { ResultWriter, sourceOfRule } from "./rule-results.ts";
import { countText } from "./texts.ts";

interface Held {
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
  const { brief, size } = input;
  const rules = rulesFor(brief.place, brief.purpose);
  const geometry = cordGeometry(input, input.lift);
  const tag = tagHeights(brief.place);
  const situation = { geometry, tag };
  const writer = new ResultWriter(brief, situation, size.hemAboveFloorMm, book);
  const held = rules.active
    .map(({ rule, outside }): Held => {
      const evaluation = evaluate(rule, situation, brief.purpose, outside);
      return { rule, evaluation, result: writer.result(rule, evaluation) };
    })
    .sort(heaviestFirst);
  const review = assemble(brief, rules, held);
  return {
    review,
    findings: [
      ...findingsOf(held, review, new WaysOut(input, geometry, tag), brief),
      ...judgeFoldLoop(input, book),
    ],
  };
}

const KIND_ORDER = { rule: 0, standard: 1, advice: 2 } as const;
const CONFIDENCE_ORDER = { V1: 0, V2: 1, ours: 2 } as const;

/** Outcome, then laws that were read before what others say of them. */
function heaviestFirst(a: Held, b: Held): number {
  return (
    RULE_OUTCOMES.indexOf(a.result.outcome) - RULE_OUTCOMES.indexOf(b.result.outcome) ||
    KIND_ORDER[a.rule.kind] - KIND_ORDER[b.rule.kind] ||
    CONFIDENCE_ORDER[a.rule.confidence] - CONFIDENCE_ORDER[b.rule.confidence]
  );
}

function assemble(brief: Brief, rules: RuleSet, held: readonly Held[]): SafetyReview {
  const results = held.map(({ result }) => result);
  const counts = countsOf(results);
  const stops = held.filter(
    ({ rule, result }) => result.outcome === "failed" && weightOf(rule, brief) === "stop",
  );
  const stamp = stops.length > 0;
  return {
    ...(brief.place === undefined ? {} : { place: brief.place }),
    ...(brief.purpose === undefined ? {} : { purpose: brief.purpose }),
    profile: rules.profile,
    readAs: rules.readAs,
    line: lineOf(brief, rules, counts, results[0]),
    counts,
    results,
    listed: rules.listed.map(sourceOfRule),
    tests: testIds(held).map((id) => physicalTest(id, brief.units)),
    cautions: reviewCautions(brief),
    stamp,
    ...(stamp ? { stampText: stampText(brief, stops) } : {}),
  };
}

function countsOf(results: readonly RuleResult[]): Record<RuleOutcome, number> {
  const counts = { failed: 0, "not-proven": 0, "not-shown-to-fail": 0, "does-not-apply": 0 };
  for (const { outcome } of results) counts[outcome]++;
  return counts;
}

function lineOf(
  brief: Brief,
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
  return `${againstText(brief, profile)}: ${counted.join(", ")}.${first}`;
}

function againstText({ place, purpose }: Brief, profile: SafetyReview["profile"]): string {
  if (place === undefined || purpose === undefined || profile === "caution") {
    return "Read against our own caution profile, which is no place’s law";
  }
  const beside = profile === "place" ? "" : " and our own caution profile";
  return `Read against the rules of ${placeText(place)}, ${purposeText(purpose)}${beside}`;
}

function stampText({ place }: Brief, stops: readonly Held[]): string {
  const ids = stops.map(({ rule }) => rule.id).join(", ");
  const where = place === undefined ? "" : ` in ${placeText(place)}`;
  return `${stops.length === 1 ? "A rule" : `${stops.length} rules`} on cords failed${where}: ${ids}. Do not sell, give away or install this shade as it is planned.`;
}

/** Tests that open results ask for, each once, those of the cords first. */
function testIds(held: readonly Held[]): PhysicalTestId[] {
  const ids = new Set<PhysicalTestId>();
  for (const { rule, result } of held)
    if (result.test !== undefined && rule.check.test) ids.add(rule.check.test);
  return [...ids];
}

function findingsOf(held: readonly Held[], review: SafetyReview, ways: WaysOut, brief: Brief): Finding[] {
  const failed = held.filter(({ result }) => result.outcome === "failed");
  const open = held.filter(({ result }) => result.outcome === "not-proven");
  return [
    ...failed.map(({ rule, evaluation, result }) =>
      failedFinding(brief, rule, result, ways.of(rule.check, evaluation)),
    ),
    ...openFinding(
      brief,
      open.map(({ result }) => result),
      review.tests.map(({ title }) => title),
      ways.ofOpen(open.map(({ rule }) => rule.check)),
    ),
  ];
}
