import type { Figure, Worked } from "../../figures/index.ts";
import type { ResolvedMaking } from "../../job/index.ts";
import type { Row, Size } from "../../shade-plan/index.ts";
import { layEvenFolds } from "./even-folds.ts";
import { CASCADE_HEM, CASCADE_STEP, foldFigures } from "./fold-figures.ts";
import { type FoldAsk, type FoldLayout, layFolds } from "./folds.ts";

type FoldSettings = ResolvedMaking["fold"];

/** Rows of a shade that folds along them. */
export interface Rows {
  folds: FoldLayout;
  /** What was asked of the folds, for findings. */
  ask: FoldAsk;
  headrailNeededMm: number;
}

/**
 * Headrail allowance and folds by the published rule that the maker chose. `skirtBy`: what the skirt or hem bar
 * section follows from besides its setting.
 */
export function layRows(
  fold: FoldSettings,
  size: Pick<Size, "finishedLengthMm">,
  headrailNeededMm: number,
  skirtBy: readonly string[] = [],
): Worked<Rows> {
  const headrailMm = fold.rule === "no-headrail" ? 0 : (fold.headrailMm ?? headrailNeededMm);
  const { steps, workings } = cascadeAsk(fold, skirtBy);
  const ask: FoldAsk = {
    lengthMm: size.finishedLengthMm,
    headrailMm,
    skirtMm: fold.rule === "even-fold" ? 0 : steps.skirtMm,
    gradeStepMm: fold.rule === "even-fold" ? 0 : steps.gradeStepMm,
    largestFoldMm: fold.largestSpacingMm,
    smallestFoldMm: Math.min(fold.smallestSpacingMm, fold.largestSpacingMm),
    stackMm: fold.stackMm,
    rows: fold.rows,
    spacingMm: fold.rule === "even-fold" ? undefined : fold.spacingMm,
  };
  const folds =
    fold.rule === "even-fold"
      ? layEvenFolds({ ...ask, hemBarMm: fold.hemBarMm, ringStackMm: fold.ringStackMm })
      : layFolds(ask);
  return {
    values: { folds, ask, headrailNeededMm },
    workings: [...workings, ...foldFigures(fold, ask, folds, skirtBy)],
  };
}

/** A row at the lower end of every fold. */
export function rowsFromHem({ bottomSectionMm, foldsMm }: FoldLayout, lengthMm: number): Row[] {
  let fromHemMm = bottomSectionMm;
  return foldsMm.map((foldMm, i) => {
    const row = { number: i + 1, fromHemMm, yMm: lengthMm - fromHemMm };
    fromHemMm += foldMm;
    return row;
  });
}

/**
 * A cascade shows each fold c below the one in front. The top fold is in front and the hem flap behind, so the half
 * folds grow by c downwards: the folds step by 2·c, and the hem hangs c below the lowest of them.
 */
function cascadeAsk(
  fold: FoldSettings,
  skirtBy: readonly string[],
): {
  steps: { gradeStepMm: number; skirtMm: number };
  workings: Figure[];
} {
  if (fold.cascadeMm === 0 || !canCascade(fold)) return { steps: fold, workings: [] };
  const step = CASCADE_STEP.figure({ c: fold.cascadeMm });
  const hem = CASCADE_HEM.figure({ b: fold.skirtMm, c: fold.cascadeMm }, { skirtBy });
  return { steps: { gradeStepMm: step.value, skirtMm: hem.value }, workings: [step, hem] };
}

/** Fixed spacings and even folds leave a cascade nothing to step by. */
export function canCascade(fold: FoldSettings): boolean {
  return fold.rule !== "even-fold" && fold.spacingMm === undefined;
}
