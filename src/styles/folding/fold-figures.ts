import { type Figure, figureRule, figureRuleOf } from "../../figures/index.ts";
import type { ResolvedMaking } from "../../job/index.ts";
import { type Cite, cite } from "../../sources/index.ts";
import { FINISHED_LENGTH } from "../base/size-inputs.ts";
import { type FoldAsk, type FoldLayout, foldLimitMm } from "./folds.ts";

/** What the fold rules lay rows by: the length, the headrail allowance, and every setting of the folds. */
export const FOLD_RULE_RESTS_ON = [
  "fold/rows",
  "fold/largestSpacingMm",
  "fold/headrailMm",
  "fold/spacingMm",
  "fold/skirtMm",
  "fold/stackMm",
  "fold/rule",
  "fold/gradeStepMm",
  "fold/cascadeMm",
  "fold/smallestSpacingMm",
  "fold/hemBarMm",
  "fold/ringStackMm",
  "figure:measure.finished-length",
  "figure:shape.headrail-needed",
] as const;

/** What the skirt or hem bar section follows from besides its setting. */
export interface SkirtOf {
  skirtBy: readonly string[];
}

/** How much each fold of a cascade is smaller than the one below it, mm. */
export const CASCADE_STEP = figureRule({
  id: "shape.cascade-step",
  label: "Each fold smaller than the one below",
  symbol: "c_F",
  unit: "mm",
  formula: "2·c",
  inputs: { c: ["mm", "each fold shows below the one in front", "fold/cascadeMm"] },
  restsOn: ["fold/rule", "fold/spacingMm"],
  cite: cite("cascade-folds"),
  compute: ({ c }) => 2 * c,
});

/** How far the hem of a cascade hangs below its lowest fold, mm. */
export const CASCADE_HEM = figureRuleOf<SkirtOf>()({
  id: "shape.cascade-hem",
  label: "Hem below the lowest fold",
  symbol: "k",
  unit: "mm",
  formula: "b + c",
  inputs: ({ skirtBy }) => ({
    b: ["mm", "skirt", "fold/skirtMm", ...skirtBy],
    c: ["mm", "each fold shows below the one in front", "fold/cascadeMm"],
  }),
  restsOn: ["fold/rule", "fold/spacingMm"],
  cite: cite("cascade-folds"),
  compute: ({ b, c }) => b + c,
});

const HEADRAIL = [
  "mm",
  "headrail allowance",
  "fold/headrailMm",
  "fold/rule",
  "figure:shape.headrail-needed",
] as const;
const skirt = ({ skirtBy }: SkirtOf) =>
  ["mm", "skirt below the stack", "fold/skirtMm", "figure:shape.cascade-hem", ...skirtBy] as const;
const ROWS = ["count", "ring rows", ...FOLD_RULE_RESTS_ON] as const;

const EVEN_FOLD = figureRuleOf<SkirtOf>()({
  id: "shape.fold",
  label: "Fold",
  symbol: "F",
  unit: "mm",
  formula: "(L − T − h) / p",
  inputs: ({ skirtBy }) => ({
    L: FINISHED_LENGTH,
    T: HEADRAIL,
    h: ["mm", "hem bar section", "fold/hemBarMm", ...skirtBy],
    p: ROWS,
  }),
  cite: cite("even-fold-slides", "number of folds rounded up, not to nearest"),
  compute: ({ L, T, h, p }) => (L - T - h) / p,
});

const HEADRAIL_LEFT = figureRuleOf<SkirtOf>()({
  id: "shape.headrail",
  label: "Headrail allowance left over by the fixed spacing",
  symbol: "T",
  unit: "mm",
  formula: "L − k − s / 2 − p·s",
  inputs: (of) => ({
    L: FINISHED_LENGTH,
    k: skirt(of),
    s: ["mm", "spacing of rows", "fold/spacingMm"],
    p: ROWS,
  }),
  cite: cite("geometry"),
  compute: ({ L, k, s, p }) => L - k - s / 2 - p * s,
});

const HALF_FOLDS = figureRuleOf<SkirtOf & { source: Cite; limitMm: number }>()({
  id: "shape.half-folds",
  label: "Number of half folds, odd",
  symbol: "N",
  unit: "count",
  formula: "2·p + 1",
  inputs: ({ skirtBy }) => ({ p: [...ROWS, ...skirtBy] }),
  cite: ({ source }) => source,
  note: ({ limitMm }) => `the fewest rows whose spacing is at most ${Math.round(limitMm * 10) / 10} mm`,
  compute: ({ p }) => 2 * p + 1,
});

const GRADED_HALF_FOLD = figureRuleOf<SkirtOf>()({
  id: "shape.half-fold",
  label: "Lowest half fold",
  symbol: "f",
  unit: "mm",
  formula: "(L − T − k + c·p·(p − 1) / 2) / (2·p + 1)",
  inputs: (of) => ({
    L: FINISHED_LENGTH,
    T: HEADRAIL,
    k: skirt(of),
    c: ["mm", "step from fold to fold", "fold/gradeStepMm", "figure:shape.cascade-step"],
    p: ROWS,
  }),
  cite: cite("geometry", "half-fold rule with folds that grow smaller upwards"),
  compute: ({ L, T, k, c, p }) => (L - T - k + (c * p * (p - 1)) / 2) / (2 * p + 1),
});

const HALF_FOLD = figureRuleOf<SkirtOf & { source: Cite }>()({
  id: "shape.half-fold",
  label: "Half fold",
  symbol: "f",
  unit: "mm",
  formula: "(L − T − k) / (2·p + 1)",
  inputs: (of) => ({ L: FINISHED_LENGTH, T: HEADRAIL, k: skirt(of), p: ROWS }),
  cite: ({ source }) => source,
  compute: ({ L, T, k, p }) => (L - T - k) / (2 * p + 1),
});

/** The figures of the rule that was followed, so that each can be shown and checked; none where no fold fits. */
export function foldFigures(
  { rule }: Pick<ResolvedMaking["fold"], "rule">,
  ask: FoldAsk,
  folds: FoldLayout,
  skirtBy: readonly string[],
): Figure[] {
  if (folds.unmet.includes("length")) return [];
  const L = ask.lengthMm;
  const T = folds.headrailMm;
  const k = folds.skirtMm;
  const p = folds.foldsMm.length;
  if (rule === "even-fold") return [EVEN_FOLD.figure({ L, T, h: folds.bottomSectionMm, p }, { skirtBy })];
  const [lowest = 0, second = lowest] = folds.foldsMm;
  if (ask.spacingMm !== undefined && lowest === ask.spacingMm) {
    return [HEADRAIL_LEFT.figure({ L, k, s: ask.spacingMm, p }, { skirtBy })];
  }
  const source = rule === "no-headrail" ? cite("ring-spacing-faq") : cite("pocket-spacing");
  const step = lowest - second;
  if (step > 0) return [GRADED_HALF_FOLD.figure({ L, T, k, c: step, p }, { skirtBy })];
  const half = HALF_FOLD.figure({ L, T, k, p }, { skirtBy, source });
  if (ask.rows !== undefined || step !== 0) return [half];
  return [HALF_FOLDS.figure({ p }, { skirtBy, source, limitMm: foldLimitMm(ask) }), half];
}
