import { ringCount, type StyleStep } from "../../shade-plan/index.ts";
import { SMALL_PARTS } from "../../words/index.ts";
import { stepWords } from "../base/step-words.ts";
import type { StyleStepInput } from "../style.ts";
import { cutHaberdashery, dress, hangWeight, marksOf, marksText, sewFrill } from "./gather-steps.ts";

/** Rings on the flat cloth, the lowest tied, the head gathered. `scallops` is what the style calls them. */
export function gatheredHemSteps(input: StyleStepInput, scallops: string, dressing: string): StyleStep[] {
  return [
    ...cutHaberdashery(input),
    ...sewFrill(input),
    rows(input),
    columns(input),
    rings(input),
    gatherHead(input),
    ...tie(input, scallops),
    measureIt(input, scallops),
    ...hangWeight(input, input.grid.bottomSectionMm),
    dress(input, dressing),
  ];
}

function rows(input: StyleStepInput): StyleStep {
  const { len } = stepWords(input);
  const all = marksOf(input, "row");
  const tied = all.filter(({ label }) => label.startsWith("tied"));
  const others = all.slice(tied.length);
  return {
    id: "make-rows",
    chapter: "make",
    replaces: ["make-rows"],
    title: "Mark the rows on the flat cloth",
    text: `Lay the cloth on its face, the hem towards you, and measure every row from the hem up, never from the row below.${tied.length > 0 ? ` First the rings that will be tied together: ${marksText(tied, "ring", len)}. Then the rows:` : ""} ${marksText(others, "row", len)}. Mark at both sides and in the middle, and join the marks.`,
    check: "The lines run level from side to side.",
    sheet: "marking",
    figures: ["shape.flat-length"],
  };
}

function columns(input: StyleStepInput): StyleStep {
  const { len } = stepWords(input);
  return {
    id: "make-columns",
    chapter: "make",
    replaces: ["make-columns"],
    title: "Mark the columns on the flat cloth",
    text: `The cloth lies on its face, so its left edge seen from the room is at your right. From that edge mark on every row ${marksText(marksOf(input, "tape"), "column", len)}. They stand wider apart than the eyes on the board: the gathers take the rest.`,
    check: "Each column runs straight from hem to top.",
    sheet: "marking",
    figures: ["shape.scallop-cloth"],
  };
}

function rings(input: StyleStepInput): StyleStep {
  const { shade, grid, form } = input;
  const count = ringCount(grid, form);
  return {
    id: "make-rings",
    chapter: "make",
    action: {
      kind: "sew-ring",
      onto: "cloth",
      rows: count / grid.columns.length,
      columns: grid.columns.length,
    },
    replaces: ["make-rings"],
    title: `Sew ${count} rings`,
    text: `Sew a ring, ${shade.ring.name}, at every crossing: ${grid.columns.length} columns of ${count / grid.columns.length}, ${count} rings in all. Take four or five stitches through all layers and only one thread of the face. Sew the lowest ring of every column twice: it carries the shade.`,
    check: "Tug each ring of the lowest row: none gives.",
    caution: SMALL_PARTS,
    sheet: "marking",
  };
}

function tie(input: StyleStepInput, scallops: string): StyleStep[] {
  const { form } = input;
  if (form.tiedRings === undefined) return [];
  const count = form.tiedRings + 1;
  return [
    {
      id: "make-tied-rings",
      chapter: "make",
      before: "make-head",
      title: `Tie the lowest ${count} rings together`,
      text: `In every column thread a strong tape through the lowest ${count} rings, the last of them at the mark of row 1, draw them together and tie it with a knot that does not slip. The cloth between them stays drawn up and makes the ${scallops}, lowered as well as raised.`,
      check: "The rings of each bundle touch, and all bundles lie on one level line.",
      sheet: "back",
    },
  ];
}

function gatherHead(input: StyleStepInput): StyleStep {
  const { size } = input;
  const { len } = stepWords(input);
  return {
    id: "make-head",
    chapter: "make",
    before: "make-length",
    title: "Gather the head",
    text: `Sew the gathering tape along the back just below the top line, its cords free at both ends. Draw the cords up until the head measures ${len(size.finishedWidthMm)}, spread the gathers evenly, and knot the cords. Tuck their ends in: let out, the shade can be washed flat.`,
    check: `The head measures ${len(size.finishedWidthMm)}, as full at the sides as in the middle.`,
    sheet: "front",
  };
}

function measureIt(input: StyleStepInput, scallops: string): StyleStep {
  const { size } = input;
  const { len } = stepWords(input);
  return {
    id: "make-length",
    chapter: "make",
    replaces: ["make-length"],
    title: "Check the finished length",
    text: `Hang the shade up by its top line. From there to the lowest point of the ${scallops} it measures ${len(size.finishedLengthMm)}, at the left, the centre and the right. Draw the top line again where it does not, with chalk that brushes out.`,
    check: `All ${scallops} end on one level line.`,
    sheet: "front",
  };
}
