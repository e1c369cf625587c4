import type { Step } from "../shade-plan/index.ts";
import type { Bench } from "./bench.ts";
import { sentences } from "./wording.ts";

/** The last measure of the sewing, and the top edge made ready for the board. */
export function topSteps(bench: Bench): Step[] {
  return [finish(bench), ...(bench.stapled ? [] : [tape(bench)])];
}

function finish({ size, len, about }: Bench): Step {
  return {
    id: "make-length",
    chapter: "make",
    title: "Check the finished length",
    text: sentences(
      `Lay the shade flat and measure from the hem to ${len(size.finishedLengthMm)} at the left, the centre and the right.`,
      "Draw the top line again there, on the face as well, with chalk that brushes out. If sewing has taken a little up, the line moves; the rows do not.",
    ),
    check: `The three marks lie on one straight line within ${about("level")}, at right angles to the sides.`,
    sheet: "marking",
  };
}

function tape({ size, len, boardAllowanceMm }: Bench): Step {
  return {
    id: "make-tape",
    chapter: "make",
    title: "Sew the soft tape on",
    text: `Turn the ${len(boardAllowanceMm)} above the top line to the back and press. Lay the soft half of the hook-and-loop tape over the turned cloth, just below the fold, and sew it along both edges, over the whole ${len(size.finishedWidthMm)}.`,
    check: `From the fold to the hem it still measures ${len(size.finishedLengthMm)}.`,
    sheet: "back",
  };
}
