import type { Finding } from "../figures/index.ts";
import type { LiftTraits } from "../job/index.ts";
import type { Grid } from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";
import { lengthText } from "../units/index.ts";
import type { LiftInput, LiftShade } from "./lift-input.ts";

/** What closed cords up the back ask for, and what they leave open. */
export function judgeRear({ shade, grid, liftParts }: LiftInput): Finding[] {
  const bare = bareStretches(shade, liftParts.takeUp);
  switch (shade.rearCords) {
    case "open":
      return [];
    case "ring-locked":
      return [grippedSleeve(shade, grid), bare, friction(shade)];
    case "enclosed":
      return [bare, friction(shade)];
  }
}

function base(shade: LiftShade) {
  return {
    stage: "rig",
    shadeId: shade.shadeId,
    path: `${shade.path}/shade/making/lift/rearCords`,
    remedies: [],
  } as const;
}

/** A cord that is held at every ring cannot slide, so nothing below the top ring can gather. */
function grippedSleeve(shade: LiftShade, grid: Grid): Finding {
  const text = (mm: number) => lengthText(mm, shade.units);
  const rows = grid.rows.length;
  return {
    ...base(shade),
    remedies: [],
    id: "rig.gripped-sleeve",
    severity: "note",
    text: `The rings grip a woven sleeve, and the cord slides inside it. Do not fix the bare cord itself at every ring: it could then not slide, the shade would come up as one sheet, and of its ${rows} ${rows === 1 ? "fold" : "folds"} only the cloth above the top ring, ${text(grid.topSectionMm)}, would ever fold. Sleeve and rings must be made for each other: whether they hold against a pull is for their maker to say and for the physical test to show.`,
    cite: cite("geometry", "a cord held at two rings keeps its length between them"),
  };
}

const BARE: Record<LiftTraits["takeUp"], string> = {
  lock: "along the board between the eyes and the lock, and below the lock",
  cleat: "along the board between the eyes, and from the last one down to the cleat",
  tube: "for the last stretch up to its spool",
};

/** Where the sleeve ends the cord is bare. */
function bareStretches(shade: LiftShade, takeUp: LiftTraits["takeUp"]): Finding {
  return {
    ...base(shade),
    remedies: [],
    id: "rig.bare-cord",
    severity: "note",
    text: `A sleeve ends under the board: each cord is bare ${BARE[takeUp]}. At the bottom its knot must stay open until the hem is level; close the sleeve there afterwards.`,
    cite: cite("geometry", "a sleeve cannot run through an eye or onto a spool"),
  };
}

function friction(shade: LiftShade): Finding {
  return {
    ...base(shade),
    remedies: [],
    id: "lift.sleeve-friction",
    severity: "unproven",
    text: "Not proven: how much the sleeves rub. The pull and the weights of this plan leave it out. Sleeve one column first, hang its share of the weight on the cord and see that it runs and comes down again.",
    cite: cite("our-choice", "friction of a cord in a sleeve was not found in print"),
  };
}
