import { ringCount, type StyleStep } from "../../../shade-plan/index.ts";
import { SMALL_PARTS } from "../../../words/index.ts";
import { stepWords } from "../../base/step-words.ts";
import {
  cutHaberdashery,
  dress,
  hangWeight,
  marksOf,
  marksText,
  sewFrill,
} from "../../gathering/gather-steps.ts";
import type { StyleStepInput } from "../../style.ts";

/** Tapes sewn flat and drawn up, rings on the tapes, scallops hung. */
export function austrianSteps(input: StyleStepInput): StyleStep[] {
  return [
    ...cutHaberdashery(input),
    ...sewFrill(input),
    markTapes(input),
    markRows(input),
    shirr(input),
    head(input),
    rings(input),
    measureTapes(input),
    ...hangWeight(input, input.grid.bottomSectionMm),
    dress(
      input,
      "Lowered, draw every swag down and forward in the middle between two tapes, from the top row to the hem. Then raise the shade slowly, stop at every row and pull the swags forward over the ones below.",
    ),
  ];
}

function markTapes(input: StyleStepInput): StyleStep {
  const { len } = stepWords(input);
  return {
    id: "make-columns",
    chapter: "make",
    replaces: ["make-columns"],
    title: `Mark ${input.grid.columns.length} lines for the tapes`,
    text: `Lay the cloth on its face, the hem towards you: its left edge seen from the room is at your right. From that edge mark, from the hem to the top line, ${marksText(marksOf(input, "tape"), "tape", len)}. They stand wider apart than they will on the finished shade: each scallop has cloth to hang in.`,
    check: "Every line runs straight from the hem to the top line.",
    sheet: "marking",
    figures: ["shape.gathered-width"],
  };
}

function markRows(input: StyleStepInput): StyleStep {
  const { len } = stepWords(input);
  return {
    id: "make-rows",
    chapter: "make",
    replaces: ["make-rows"],
    title: "Mark where the rows come",
    text: `Along the outer lines and the middle one, mark from the hem up where each row of rings comes on the cloth: ${marksText(marksOf(input, "row"), "row", len)}. The marks spread the gathers: as much cloth for each row as for the next.`,
    check: "The marks of one row lie level from side to side.",
    sheet: "marking",
    figures: ["shape.flat-length"],
  };
}

function shirr(input: StyleStepInput): StyleStep {
  const { size, grid } = input;
  const { len } = stepWords(input);
  const tapeMm = size.finishedLengthMm - grid.bottomSectionMm;
  return {
    id: "make-shirring",
    chapter: "make",
    before: "make-rings",
    title: "Sew on the tapes and draw them up",
    text: `Sew a tape along every line on the back, down both its edges, from the hem to the top line, and leave its cords free. Knot the cords at the hem. Catch the hem up to the mark of row 1 at every tape: that makes the corners of the scallops. Draw the cords up from the top until each tape measures ${len(tapeMm)} from the mark of row 1 to the top line, slide the gathers until the marks of the rows are evenly apart, and knot the cords. Keep their ends: let out, the shade can be washed flat.`,
    check: `All ${grid.columns.length} tapes measure ${len(tapeMm)}, and the swags hang alike.`,
    sheet: "back",
    figures: ["shape.tape"],
  };
}

function head(input: StyleStepInput): StyleStep {
  const { size } = input;
  const { len } = stepWords(input);
  return {
    id: "make-head",
    chapter: "make",
    after: "make-shirring",
    title: "Take the width in at the head",
    text: `Along the top line the cloth is wider than the board. Lay what each scallop has more than its width in small pleats at its two tapes, half of it at each, until the top line measures ${len(size.finishedWidthMm)}, and sew across them.`,
    check: `The head measures ${len(size.finishedWidthMm)}, and each tape lies as far from the edge as its column will.`,
    sheet: "front",
  };
}

function rings(input: StyleStepInput): StyleStep {
  const { shade, grid, form } = input;
  const { len } = stepWords(input);
  const count = ringCount(grid, form);
  const rows = [...grid.rows].reverse();
  const places = rows
    .map(({ number, yMm }, i) => `${i === 0 ? "row " : ""}${number} at ${len(yMm)}`)
    .join(", ");
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
    title: `Sew ${count} rings to the tapes`,
    text: `Sew a ring, ${shade.ring.name}, to every tape at each row. Measure along the drawn-up tape from the top line down: ${places}. Sew through tape and gathers. Sew the bottom row twice: the cords are tied to it, and it carries the shade.`,
    check: "Tug each ring of the bottom row: none gives.",
    caution: SMALL_PARTS,
    sheet: "back",
  };
}

function measureTapes(input: StyleStepInput): StyleStep {
  const { size, grid } = input;
  const { len } = stepWords(input);
  return {
    id: "make-length",
    chapter: "make",
    replaces: ["make-length"],
    title: "Check the length along the tapes",
    brief: `${len(size.finishedLengthMm - grid.bottomSectionMm)} to the lowest ring · ${len(size.finishedLengthMm)} to the scallops`,
    text: `Hang the shade up by its top line and measure along every tape: ${len(size.finishedLengthMm - grid.bottomSectionMm)} from the top line to the lowest ring. The scallops hang ${len(grid.bottomSectionMm)} below that, ${len(size.finishedLengthMm)} from the top line to their lowest point. Let the cords of a tape out or draw them in until it is so.`,
    check: "All tapes are equally long, and all scallops end on one level line.",
    sheet: "front",
    figures: ["shape.tape"],
  };
}
