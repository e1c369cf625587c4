import type { StyleStep } from "../../../shade-plan/index.ts";
import { listed } from "../../../words/index.ts";
import { stepWords } from "../../base/step-words.ts";
import { pleatSteps } from "../../draping/pleat-steps.ts";
import type { StyleStepInput } from "../../style.ts";

/** Pleats, rings behind them, and the lowest marks tied into a pouf that stays. */
export function balloonSteps(input: StyleStepInput): StyleStep[] {
  return [
    ...pleatSteps(input),
    ...rows(input),
    columns(input),
    ...tie(input),
    ...length(input),
    dress(input),
  ];
}

/** With a pouf there is more cloth than length: rows are marked on the flat cloth. */
function rows(input: StyleStepInput): StyleStep[] {
  const { form } = input;
  if (form.pouf === undefined) return [];
  const { len, back } = stepWords(input);
  const across = form.marks.filter(({ along }) => along === "y");
  const tied = across.filter(({ kind }) => kind === "gather");
  const above = across.filter(({ kind }) => kind === "row");
  return [
    {
      id: "make-pouf-rows",
      chapter: "make",
      replaces: ["make-rows"],
      title: "Mark the rows",
      text: `Mark on the ${back}, measuring everything from the hem up and never from one mark to the next. For the pouf, ${tied.length} lines that will be tied together: ${listed(tied.map(({ atMm }) => len(atMm)))}; the lowest is row 1.${
        above.length === 0
          ? ""
          : ` Then ${listed(above.map(({ label, atMm }) => `${label.toLowerCase()} at ${len(atMm)}`))}.`
      } Mark at every pleat and join the marks.`,
      check: "Each line is as far from the hem at both sides as in the middle.",
      sheet: "marking",
    },
  ];
}

function columns(input: StyleStepInput): StyleStep {
  const { grid, form } = input;
  const { len } = stepWords(input);
  return {
    id: "make-pleat-columns",
    chapter: "make",
    replaces: ["make-columns"],
    title: "Mark the columns",
    text: `The shade lies on its face, the hem towards you, its left edge seen from the room at your right. ${form.pleats.length > 0 ? "The rings go on the middle line at the back of each pleat, where it crosses a row" : "The rings go where the columns cross the rows"}: ${listed(grid.columns.map(({ number, xMm }) => `column ${number} at ${len(xMm)}`))} from that edge, the pleats closed.`,
    check: "Each column runs straight from hem to top along its pleat.",
    sheet: "marking",
    figures: ["shape.column-spacing"],
  };
}

function tie(input: StyleStepInput): StyleStep[] {
  const { form } = input;
  if (form.pouf === undefined) return [];
  const { len } = stepWords(input);
  const marks = form.pouf.loops + 1;
  return [
    {
      id: "make-pouf",
      chapter: "make",
      after: "make-rings",
      title: "Tie the pouf",
      text: `Sew a ring at each of the ${marks} lines of the pouf in every column, ${form.pouf.loops} more than the rows ask for. Tie the ${marks} of them together with strong thread, so that the cloth between hangs as a pouf. ${len(form.pouf.clothMm)} of cloth stay up in it for good. The cord is tied to the same rings later.`,
      check: "Held up by the top line, the poufs hang alike and the hem is tucked behind them.",
      sheet: "back",
      figures: ["shape.bottom-section"],
    },
  ];
}

/** Tied up, the cloth no longer measures its length from hem to top line. */
function length(input: StyleStepInput): StyleStep[] {
  const { grid, form } = input;
  if (form.pouf === undefined) return [];
  const { len, lengthMm } = stepWords(input);
  return [
    {
      id: "make-pouf-length",
      chapter: "make",
      replaces: ["make-length"],
      title: "Check the finished length",
      brief: `${len(lengthMm - grid.bottomSectionMm)} to the lowest rings · ${len(lengthMm)} to the poufs`,
      text: `Hang the shade up by its top edge and measure from the top line: ${len(lengthMm - grid.bottomSectionMm)} to the lowest rings at every column, ${len(lengthMm)} to the lowest point of the poufs. Draw the top line again there, on the face as well, with chalk that brushes out.`,
      check: "The lowest rings hang on one level line.",
      sheet: "front",
    },
  ];
}

function dress({ grid, size }: StyleStepInput): StyleStep {
  const poufs = Math.max(1, grid.columns.length - 1);
  return {
    id: "train-poufs",
    chapter: "train",
    after: "train-fold",
    title: "Dress the poufs",
    text: `Open the pleats with both hands from below, and pull the cloth of each of the ${poufs} poufs forward and down in the middle. Soft paper in the poufs keeps them round for the first days.${size.hemAboveFloorMm !== undefined && size.hemAboveFloorMm < 0 ? " As planned the poufs touch the floor." : ""}`,
    check: "The lowest points of all poufs are at one height.",
    sheet: "front",
  };
}
