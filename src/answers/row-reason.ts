import { STYLE_TRAITS } from "../job/index.ts";
import type { ShadePlan } from "../plan/index.ts";
import { type Cite, cite } from "../sources/index.ts";

/** Rows differ by less than this where they are meant to stand evenly, mm. */
const EVEN_MM = 0.05;

/** Whether every row stands as far from the next. */
export function areRowsEven({ grid }: ShadePlan): boolean {
  const [first = 0] = grid.spacingsMm;
  return grid.spacingsMm.every((mm) => Math.abs(mm - first) < EVEN_MM);
}

/** Whether its rows come from half folds, all alike: a graduated shade, one that hangs already, other styles have their own. */
export function hasHalfFolds(shade: ShadePlan): boolean {
  if (!STYLE_TRAITS[shade.style].partsIntoHalfFolds || shade.existing !== undefined) return false;
  const { bottomSectionMm, skirtMm, spacingsMm, topSectionMm, headrailMm } = shade.grid;
  const foldMm = 2 * (bottomSectionMm - skirtMm);
  return [...spacingsMm, topSectionMm - headrailMm].every((mm) => Math.abs(mm - foldMm) < EVEN_MM);
}

/** Why the rows of a shade stand where they do. */
export function rowReason(shade: ShadePlan): { reason: string; cite: Cite } {
  if (hasHalfFolds(shade)) {
    return {
      reason:
        "What hangs below the headrail is parted into an odd number of equal half folds: one below the first row, two between rows. Then the hem ends level with the folds.",
      cite: cite("pocket-spacing"),
    };
  }
  return {
    reason: areRowsEven(shade)
      ? "The rows stand evenly, so that each fold takes as much cloth as the next."
      : "Each fold takes the cloth from its row to the next, so that rows unevenly apart make uneven folds.",
    cite: cite("geometry"),
  };
}
