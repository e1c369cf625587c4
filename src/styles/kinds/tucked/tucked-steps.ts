import type { StyleStep } from "../../../shade-plan/index.ts";
import { counted, IRON, LADDER, listed } from "../../../words/index.ts";
import { stepWords } from "../../base/step-words.ts";
import type { StyleStepInput } from "../../style.ts";
import { tucksOf } from "./tucks-of.ts";

/** Tucks sewn through all layers from the hem up, then rings behind every second one. */
export function tuckedSteps(input: StyleStepInput): StyleStep[] {
  const tucks = input.form.marks.filter(({ kind }) => kind === "tuck").length;
  if (tucks === 0) return [];
  return [markTucks(input, tucks), sewTucks(input, tucks), rows(input), train(input)];
}

function facts(input: StyleStepInput) {
  const { form, size } = input;
  const { depthMm, face, fromHemMm } = tucksOf(form, size);
  return {
    ...stepWords(input),
    depthMm,
    face,
    spacingMm: fromHemMm[0] ?? size.finishedLengthMm,
    marks: form.marks.filter(({ kind }) => kind === "tuck"),
  };
}

function markTucks(input: StyleStepInput, tucks: number): StyleStep {
  const { len, back, marks, depthMm, spacingMm, face } = facts(input);
  const last = marks.at(-1);
  const side = face === "front" ? "on the face, with chalk that brushes out or with pins" : `on the ${back}`;
  return {
    id: "make-tuck-lines",
    chapter: "make",
    before: "make-rows",
    title: "Mark the tucks",
    brief: `first ${len(marks[0]?.atMm ?? 0)} from the hem · then ${len(spacingMm + 2 * depthMm)} from tuck to tuck`,
    text: `Mark the fold line of every tuck ${side}. Measure from the hem up and never from one mark to the next: tuck 1 at ${len(marks[0]?.atMm ?? 0)}${tucks > 1 && last !== undefined ? `, then ${len(spacingMm + 2 * depthMm)} from tuck to tuck, tuck ${tucks} at ${len(last.atMm)}` : ""}; every figure stands in the marking table. What the tucks below take up is in these figures. Mark at both sides and in the middle, and baste all layers together along each line.`,
    check: "Each line is as far from the hem at both sides as in the middle.",
    sheet: "marking",
    figures: ["shape.tuck-spacing", "shape.tucks"],
  };
}

function sewTucks(input: StyleStepInput, tucks: number): StyleStep {
  const { len, depthMm, spacingMm, face } = facts(input);
  return {
    id: "make-tucks",
    chapter: "make",
    before: "make-rows",
    title: `Sew ${counted(tucks, "tuck")}`,
    text: `Fold all layers on each line, ${face === "front" ? "so that the fold stands on the face" : "face sides together, so that the fold stands at the back"}, and stitch ${len(depthMm)} from the fold, from edge to edge. Begin at the hem. Press each tuck downwards before you sew the next.`,
    check: `From stitching to stitching it is ${len(spacingMm)}; the first is ${len(spacingMm)} above the hem. Check every fourth tuck against the hem, so that a small error does not add up.`,
    caution: IRON,
    sheet: "marking",
    figures: ["shape.tuck-spacing"],
  };
}

function rows(input: StyleStepInput): StyleStep {
  const { grid } = input;
  const { len } = facts(input);
  const list = grid.rows.map(({ number }) => `${2 * number - 1}`);
  const named = `${list.length === 1 ? "tuck" : "tucks"} ${listed(list)}`;
  return {
    id: "make-rows",
    chapter: "make",
    action: {
      kind: "mark-rows",
      fromHemMm: grid.rows.map((row) => row.fromHemMm),
      columns: grid.columns.length,
    },
    replaces: ["make-rows"],
    title: "Mark the rows of rings",
    brief: `first ${len(grid.bottomSectionMm)} above the hem${grid.rows.length > 1 ? ` · then ${len(grid.spacingsMm[0] ?? 0)} apart` : ""}`,
    text: `Rings go behind every second tuck, counted from the hem: ${named}. Lay the shade on its face, the hem towards you; the stitching of these tucks is the row. The first is ${len(grid.bottomSectionMm)} above the hem${grid.rows.length > 1 ? `, and they are ${len(grid.spacingsMm[0] ?? 0)} apart` : ""}.`,
    check: `From the top row to the top line it is ${len(grid.topSectionMm)}, at both sides.`,
    sheet: "marking",
  };
}

function train(input: StyleStepInput): StyleStep {
  const { grid } = input;
  const { len } = facts(input);
  const folds = grid.rows.length;
  return {
    id: "train-fold",
    chapter: "train",
    action: { kind: "dress-folds", folds, raisedMm: grid.raisedHeightMm },
    replaces: ["train-fold"],
    title: "Lay the folds",
    text: `Raise the shade slowly and stop at every row. Each of the ${folds === 1 ? "folds" : `${folds} folds`} breaks forward on the tuck between two rows of rings: pinch that tuck from the middle out to both sides. Raised, the shade is ${len(grid.raisedHeightMm)} from the top of the board to the hem.`,
    check: "Every fold has a tuck at its front edge and another with its rings behind.",
    caution: LADDER,
    sheet: "side",
    figures: ["shape.raised-height"],
  };
}
