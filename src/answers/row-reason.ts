import type { ShadePlan } from "../plan/index.ts";
import { type Cite, cite } from "../sources/index.ts";

/** Rows differ by less than this where they are meant to stand evenly, mm. */
const EVEN_MM = 0.05;

/** Whether every row stands as far from the next. */
export function areRowsEven({ grid }: ShadePlan): boolean {
  const [first = 0] = grid.spacingsMm;
  return grid.spacingsMm.every((mm) => Math.abs(mm - first) < EVEN_MM);
}

/** Whether its rows come from the rule of half folds: tapes, tucks, gathers, and rows that were measured, have their own. */
export function hasHalfFolds({ workings }: ShadePlan): boolean {
  return workings.some(({ id }) => id === "shape.half-folds");
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
