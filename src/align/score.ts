import { SUM_SLACK_MM } from "../units/index.ts";
import type { LineScore } from "./line-problem.ts";

interface Scored {
  score: LineScore;
  spacingMark: number;
  phaseMark?: number;
}

/** Negative where `a` is better, by the objective alone. */
export function compareScores(a: LineScore, b: LineScore): number {
  if (a.levels !== b.levels) return b.levels - a.levels;
  if (a.followers !== b.followers) return b.followers - a.followers;
  if (Math.abs(a.costMm - b.costMm) > SUM_SLACK_MM) return a.costMm - b.costMm;
  return Math.abs(a.bottomExtraMm - b.bottomExtraMm) > SUM_SLACK_MM ? a.bottomExtraMm - b.bottomExtraMm : 0;
}

/** Of equals the larger spacing and then the lower phase, so that one room has one answer. */
export function isBetter(a: Scored, b: Scored): boolean {
  const by = compareScores(a.score, b.score);
  if (by !== 0) return by < 0;
  if (a.spacingMark !== b.spacingMark) return a.spacingMark > b.spacingMark;
  return (a.phaseMark ?? Number.POSITIVE_INFINITY) < (b.phaseMark ?? Number.POSITIVE_INFINITY);
}
