import { ringCount, type StyleStep } from "../../../shade-plan/index.ts";
import { LADDER, SMALL_PARTS } from "../../../words/index.ts";
import { stepWords } from "../../base/step-words.ts";
import type { StyleStepInput } from "../../style.ts";

/** Tapes marked, cloth gathered onto them mark by mark, rings through both. */
export function hobbledSteps(input: StyleStepInput): StyleStep[] {
  return [
    cutTapes(input),
    markCloth(input),
    sewTapes(input),
    rings(input),
    measureTapes(input),
    dress(input),
  ];
}

function facts(input: StyleStepInput) {
  const { size, grid, form } = input;
  const marks = form.marks.filter(({ kind }) => kind === "tape");
  const clothMm = marks[0]?.atMm ?? form.stretches.reduce((sum, stretch) => sum + stretch.clothMm, 0);
  const tapeMm = size.finishedLengthMm / (marks.length + 1);
  const [tape] = form.haberdashery;
  return { ...stepWords(input), marks, clothMm, tapeMm, columns: grid.columns.length, tape };
}

function cutTapes(input: StyleStepInput): StyleStep {
  const { len, marks, tapeMm, columns, tape } = facts(input);
  const spareMm = (tape?.lengthMm ?? 0) - input.size.finishedLengthMm;
  return {
    id: "cut-hobble-tapes",
    chapter: "cut",
    after: "cut-bar",
    title: `Cut and mark ${columns} tapes`,
    text: `Cut ${columns} lengths of twill tape, each ${len(tape?.lengthMm ?? 0)}. Draw a line ${len(spareMm / 2)} in from one end: that is the hem. From it mark ${marks.length} times, ${len(tapeMm)} from mark to mark, measuring every mark from the hem line and never from the one before; the last line, ${len(input.size.finishedLengthMm)} from the hem, is the top line.`,
    check: "Laid side by side, all tapes show their marks at the same places.",
    figures: ["shape.hobble-tape", "shape.hobble-tape-length"],
  };
}

function markCloth(input: StyleStepInput): StyleStep {
  const { len, marks, clothMm } = facts(input);
  const last = marks.at(-1);
  const figures =
    marks.length === 0
      ? "There is only one fold: no mark between hem and top line."
      : `From the hem up they are ${len(clothMm)} apart: mark 1 at ${len(marks[0]?.atMm ?? 0)}${marks.length > 1 && last !== undefined ? `, mark ${marks.length} at ${len(last.atMm)}` : ""}, every figure in the marking table.`;
  return {
    id: "make-hobble-marks",
    chapter: "make",
    replaces: ["make-rows"],
    title: "Mark the cloth for the tapes",
    brief: `${len(clothMm)} apart`,
    text: `The cloth is longer than the tapes, so its marks are further apart than theirs. Lay the shade on its face, the hem towards you, and mark across the back. ${figures} Measure each from the hem and never from the mark below; mark at both sides and in the middle, and join the marks.`,
    check: `From the last mark to the top line of the cloth it is ${len(clothMm)}, at both sides.`,
    sheet: "marking",
    figures: ["shape.hobble-cloth"],
  };
}

function sewTapes(input: StyleStepInput): StyleStep {
  const { len, clothMm, tapeMm, columns } = facts(input);
  const blackout = input.shade.cloths.blackout !== undefined;
  return {
    id: "make-hobble-tapes",
    chapter: "make",
    before: "make-rings",
    title: "Sew the cloth onto the tapes",
    brief: `${len(clothMm)} of cloth over ${len(tapeMm)} of tape`,
    text: `Lay one tape along each of the ${columns} columns. Sew its hem line to the hem, then bring mark to mark, from the hem up: ${len(clothMm)} of cloth stand up over ${len(tapeMm)} of tape each time. Bar-tack tape and all layers together at every mark, and at the top line.${blackout ? " Take few stitches: each shows through the blackout as a point of light." : ""}`,
    check:
      "Held up by the top line, the tapes hang straight and carry the weight; the cloth falls in even folds between.",
    sheet: "marking",
  };
}

function rings(input: StyleStepInput): StyleStep {
  const { shade, grid, form } = input;
  const count = ringCount(grid, form);
  const { len } = stepWords(input);
  return {
    id: "make-rings",
    chapter: "make",
    action: {
      kind: "sew-ring",
      onto: "tape",
      rows: count / grid.columns.length,
      columns: grid.columns.length,
    },
    replaces: ["make-rings"],
    title: `Sew ${count} rings`,
    brief: `first row ${len(grid.bottomSectionMm)} above the hem`,
    text: `Sew a ring, ${shade.ring.name}, onto the tape at each of its lowest ${grid.rows.length === 1 ? "marks" : `${grid.rows.length} marks`}, on all ${grid.columns.length} tapes. The first row is ${len(grid.bottomSectionMm)} above the hem along the tape. Marks nearer to the top line than ${len(grid.headrailMm)} get none: that much hangs still below the board. Sew the bottom row twice: it carries the shade.`,
    check: "Tug each ring of the bottom row: none gives.",
    caution: SMALL_PARTS,
    sheet: "back",
  };
}

function measureTapes(input: StyleStepInput): StyleStep {
  const { size, form } = input;
  const { len } = stepWords(input);
  const cloth = form.stretches.reduce((sum, { clothMm }) => sum + clothMm, 0);
  return {
    id: "make-length",
    chapter: "make",
    replaces: ["make-length"],
    title: "Check the length along the tapes",
    brief: `${len(size.finishedLengthMm)} along every tape`,
    text: `Hang the shade up by its top line and measure every tape from the hem to ${len(size.finishedLengthMm)}. Draw the top line again there, with chalk that brushes out. The cloth itself is ${len(cloth)} from hem to top line: never measure along it.`,
    check: "All tapes are equally long, and the hem hangs level.",
    sheet: "marking",
  };
}

function dress(input: StyleStepInput): StyleStep {
  const { grid, form } = input;
  const { len, marks } = facts(input);
  const [bottom] = form.stretches;
  const droopMm = bottom === undefined ? 0 : (bottom.clothMm - bottom.cordMm) / 2;
  return {
    id: "train-fold",
    chapter: "train",
    replaces: ["train-fold"],
    title: "Dress the folds",
    text: `Lowered, draw each of the ${marks.length + 1} folds down and forward between your fingers so that it hangs over the mark below, about ${len(droopMm)} past it. Then raise the shade slowly, stop at every row and lay the folds one on the other. Raised, it is ${len(grid.raisedHeightMm)} from the top of the board to the hem.`,
    check: "The folds are even, lowered and raised, and none has slipped behind the tapes.",
    caution: LADDER,
    sheet: "side",
    figures: ["shape.raised-height"],
  };
}
