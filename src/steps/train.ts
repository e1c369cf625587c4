import { hangingCords, type Step } from "../shade-plan/index.ts";
import { counted, LADDER } from "../words/index.ts";
import type { Bench } from "./bench.ts";
import { cordCautionLeft } from "./cord-caution.ts";
import { sentences } from "./wording.ts";

/** The folds laid by hand once, so that they fall that way by themselves. */
export function trainSteps(bench: Bench): Step[] {
  return [fold(bench), tieUp(bench), tag(bench), finish(bench)];
}

function fold({ grid, len, ribbed }: Bench): Step {
  const folds = grid.rows.length;
  return {
    id: "train-fold",
    chapter: "train",
    action: { kind: "dress-folds", folds, raisedMm: grid.raisedHeightMm },
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
    action: { kind: "tie-folds", folds: grid.rows.length, ties },
    title: "Tie it up and leave it",
    text: `Tie the folded shade loosely with ${ties} soft strips of cloth, near both sides and evenly between.${hangingCords(lift).length > 0 ? " Wind all cords on their cleats." : ""} Leave it for several days; linen and other cloths that crease well keep the folds for good.`,
    check: "The strips hold the folds without marking them.",
    caution: cordCautionLeft({ lift }),
    sheet: "side",
  };
}

function tag({ lift }: Bench): Step {
  return {
    id: "train-tag",
    chapter: "train",
    title: "Put the child-safety tag on",
    text: "Cut out the child-safety tag that is printed with this plan, fill in what is blank, and fix it near the lower edge, where it is read with the shade let down. It stays on, for whoever lives with the shade later.",
    check: "With the shade let down every word of it can be read.",
    caution: cordCautionLeft({ lift }),
    action: { kind: "fix-tag" },
  };
}

function finish({ grid, len, size, lift }: Bench): Step {
  return {
    id: "train-finish",
    chapter: "train",
    title: "Look it over",
    brief: `let down ${len(size.finishedLengthMm)} · raised ${len(grid.raisedHeightMm)}`,
    text: `Untie it, lower it and raise it twice. Lowered it covers ${len(size.finishedLengthMm)}; raised it leaves ${len(grid.raisedHeightMm)} at the top. Whoever washes or moves it will need its numbers: they stand on the hand-over sheet. The rest of this plan stays with its maker.`,
    check: "It folds by itself. If a fold still falls backwards, lay it again and leave it tied for longer.",
    caution: cordCautionLeft({ lift }),
    sheet: "front",
  };
}
