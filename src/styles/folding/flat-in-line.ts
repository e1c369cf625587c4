import type { ResolvedMaking } from "../../job/index.ts";
import type { LineAsk, LineBottom, RowLayout } from "../../shade-plan/index.ts";
import type { LineAskInput, StyleInLine } from "../in-line.ts";

type FoldSettings = ResolvedMaking["fold"];

/** A flat shade follows a common line by its spacing, its rows and its hem section; the headrail takes up the rest. */
export const flatInLine: StyleInLine = { ask: askOf, follow };

function askOf({ shade, size, headrailNeededMm }: LineAskInput): LineAsk | string {
  const { fold } = shade.making;
  if (fold.rule !== "even-fold" && fold.gradeStepMm > 0) return "its folds grow smaller upwards";
  if (fold.rule !== "even-fold" && fold.cascadeMm > 0) return "its folds hang in a cascade";
  const isEven = fold.rule === "even-fold";
  const own = shade.own?.fold;
  return {
    lengthMm: size.finishedLengthMm,
    leastHeadrailMm: fold.rule === "no-headrail" ? 0 : (fold.headrailMm ?? headrailNeededMm),
    headrailFixed: fold.rule === "no-headrail",
    bottom: bottomOf(fold),
    // A hem band that was set on this very shade is there to be seen; a workshop's habit is where it begins.
    bottomFixed: (isEven ? own?.hemBarMm : own?.skirtMm) !== undefined,
    smallestMm: Math.min(fold.smallestSpacingMm, fold.largestSpacingMm),
    largestMm: fold.largestSpacingMm,
    // The even-fold rule gathers at least a third of the shade.
    leastGatheredMm: isEven ? size.finishedLengthMm / 3 : 0,
    ...(fold.rows === undefined ? {} : { rows: fold.rows }),
    ...(fold.spacingMm === undefined || isEven ? {} : { spacingMm: fold.spacingMm }),
    ...(fold.stackMm === undefined ? {} : { stackMm: fold.stackMm }),
  };
}

function bottomOf(fold: FoldSettings): LineBottom {
  return fold.rule === "even-fold"
    ? { kind: "hem-bar", hemBarMm: fold.hemBarMm, ringStackMm: fold.ringStackMm }
    : { kind: "half-fold", skirtMm: fold.skirtMm };
}

function follow(fold: FoldSettings, layout: RowLayout): FoldSettings {
  const placed =
    fold.rule === "even-fold"
      ? { rows: layout.rows, headrailMm: layout.headrailMm, hemBarMm: layout.bottomMm }
      : { rows: layout.rows, spacingMm: layout.spacingMm, skirtMm: layout.bottomMm - layout.spacingMm / 2 };
  return { ...fold, ...placed };
}
