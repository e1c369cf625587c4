import type { StyleStep } from "../../../shade-plan/index.ts";
import { listed } from "../../../words/index.ts";
import { stepWords } from "../../base/step-words.ts";
import { pleatSteps } from "../../draping/pleat-steps.ts";
import type { StyleStepInput } from "../../style.ts";
import { tailLengthMm } from "./judge-tailed.ts";

/** Pleats, rings behind them, and tails dressed by hand. */
export function tailedSteps(input: StyleStepInput): StyleStep[] {
  return [...pleatSteps(input), columns(input), dress(input)];
}

function columns(input: StyleStepInput): StyleStep {
  const { grid, form } = input;
  const { len } = stepWords(input);
  const behind = form.pleats.length > 0;
  const centre = grid.columns.length > 2;
  return {
    id: "make-pleat-columns",
    chapter: "make",
    replaces: ["make-columns"],
    title: "Mark the columns",
    text: `The shade lies on its face, the hem towards you, its left edge seen from the room at your right. ${
      behind
        ? "The rings go on the middle line at the back of each pleat, where it crosses a row"
        : "The rings go where the columns cross the rows"
    }: ${listed(grid.columns.map(({ number, xMm }) => `column ${number} at ${len(xMm)}`))} from that edge, the pleats closed.${centre && behind ? " The column in the middle has no pleat." : ""} Nothing is sewn beside them: the cloth there hangs down as tails.`,
    check: "Each column runs straight from hem to top along its pleat.",
    sheet: "marking",
    figures: ["shape.column-spacing"],
  };
}

function dress(input: StyleStepInput): StyleStep {
  const { grid, form } = input;
  const { len } = stepWords(input);
  const tailMm = Math.min(tailLengthMm(grid, form), grid.travelMm);
  return {
    id: "train-tails",
    chapter: "train",
    after: "train-fold",
    title: "Dress the tails",
    text: `At each side draw the folds outwards from the pleat and let them fall, one behind the other, the outer edge straight down. Each corner hangs about ${len(tailMm)} below its pleat; limp cloth hangs a little lower and further in. Make both sides alike.${form.bar === undefined ? " In the centre draw the folds down in the middle, so that they hang in a curve." : ""}`,
    check: "Seen from across the room the two tails are as long as each other and as wide.",
    sheet: "front",
    figures: ["shape.tail"],
  };
}
