import type { StyleStep } from "../../../shade-plan/index.ts";
import { LADDER } from "../../../words/index.ts";
import { stepWords } from "../../base/step-words.ts";
import type { StyleStepInput } from "../../style.ts";

/** Pockets and ribs are usual steps wherever there are ribs; this style trains its folds on them. */
export function ribbedSteps(input: StyleStepInput): StyleStep[] {
  const { grid, form, cloth } = input;
  if (form.ribs.rows.length === 0) return [];
  const { len } = stepWords(input);
  const ribs = cloth.ribLines.length;
  const breaks =
    form.ribs.between === undefined
      ? `Each fold breaks midway between two ribs: pinch it there, ${len((grid.spacingsMm[0] ?? 2 * grid.bottomSectionMm) / 2)} from the rib, from the middle out to both sides.`
      : "Every second rib comes forward and makes the front edge of a fold; the ribs with the rings stay behind.";
  return [
    {
      id: "train-fold",
      chapter: "train",
      replaces: ["train-fold"],
      title: "Lay the folds",
      text: `Raise the shade slowly and stop at every row. ${breaks} Raised, the shade is ${len(grid.raisedHeightMm)} from the top of the board to the hem.`,
      check: `All ${ribs === 1 ? "ribs hang" : `${ribs} ribs hang`} level, and none has worked its way out at an end.`,
      caution: LADDER,
      sheet: "side",
      figures: ["shape.raised-height"],
    },
  ];
}
