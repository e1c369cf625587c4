import { hangingCords, type Step } from "../shade-plan/index.ts";
import { counted, LADDER } from "../words/index.ts";
import type { Bench } from "./bench.ts";
import { cordCautionLeft } from "./cord-caution.ts";
import { sentences } from "./wording.ts";

/** The folds laid by hand once, so that they fall that way by themselves. */
export function trainSteps(bench: Bench): Step[] {
  return [fold(bench), tieUp(bench), finish(bench)];
}

function fold({ grid, len, ribbed }: Bench): Step {
  const folds = grid.rows.length;
  return {
    id: "train-fold",
    chapter: "train",
    title: "Lay the folds",
    text: sentences(
      "Raise the shade slowly and stop at every row.",
      `Draw each fold forward between your fingers, from the middle out to both sides: ${counted(folds, "fold")}, each one ${ribbed ? "breaking between two ribs" : "hanging half of its row’s spacing in front"}.`,
      `Raised, the shade is ${len(grid.raisedHeightMm)} from the top of the board to the hem.`,
    ),
    check:
      "All folds hang in front of the rings, none behind, and their edges make one straight line at either side.",
    caution: LADDER,
    sheet: "side",
    figures: ["shape.raised-height"],
  };
}

function tieUp({ grid, lift }: Bench): Step {
  const ties = Math.max(2, Math.min(grid.columns.length, 4));
  return {
    id: "train-tie",
    chapter: "train",
    title: "Tie it up and leave it",
    text: `Tie the folded shade loosely with ${ties} soft strips of cloth, near both sides and evenly between.${hangingCords(lift).length > 0 ? " Wind all cords on their cleats." : ""} Leave it for several days; linen and other cloths that crease well keep the folds for good.`,
    check: "The strips hold the folds without marking them.",
    caution: cordCautionLeft({ lift }),
    sheet: "side",
  };
}

function finish({ grid, len, size, lift }: Bench): Step {
  return {
    id: "train-finish",
    chapter: "train",
    title: "Look it over",
    text: `Untie it, lower it and raise it twice. Lowered it covers ${len(size.finishedLengthMm)}; raised it leaves ${len(grid.raisedHeightMm)} at the top. Keep this plan with the shade: whoever washes or moves it will need the numbers.`,
    check: "It folds by itself. If a fold still falls backwards, lay it again and leave it tied for longer.",
    caution: cordCautionLeft({ lift }),
    sheet: "front",
  };
}
