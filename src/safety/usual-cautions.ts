import type { Caution } from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";
import { lengthText } from "../units/index.ts";
import type { SafetyShade } from "./safety-reads.ts";

/** What cords can do, whatever the shade: worded once for the first sheet and for the review. */
export const CHILDREN_AND_CORDS: Caution = {
  id: "children-and-cords",
  title: "Cords and children",
  text: "Window cords strangle small children: quickly, silently, and with someone in the next room. Where children live or visit, choose a shade without cords that can be reached from the front, the side or the back. Pets are caught too.",
  cite: cite("cordless-advice"),
};

export const CORDS_BEHIND: Caution = {
  id: "cords-behind",
  title: "The cords behind",
  text: "A child can pull the cord out between two rings into a loop. Rings close together do not prevent that by themselves: a cord that slides through them feeds the loop, and a light shade rises with it. A cord lock stops the cord from one side only.",
  cite: cite("inner-cord-hazard"),
};

export const NEVER_KNOT: Caution = {
  id: "never-knot-together",
  title: "Never knot cords together",
  text: "Do not tie cords to each other, to a toy or to furniture, and do not let them twist into one. Tied cords are a loop.",
  cite: cite("cordless-advice"),
};

export const FURNITURE_AWAY: Caution = {
  id: "furniture-away",
  title: "Furniture away from the window",
  text: "Keep cots, beds, chairs and anything that can be climbed away from the window and the cords.",
  cite: cite("cordless-advice"),
};

/** Agencies disagree on cleats, and the maker is told so. */
export function cleatCaution({ making, units }: SafetyShade): Caution {
  return {
    id: "cleat",
    title: "A cleat does not remove the hazard",
    text: `Wind the whole of the hanging cord on a cleat in figures of eight, every time, with the cleat ${lengthText(making.lift.cleatAboveFloorMm, units)} or more above the floor. It puts the cords higher and no more than that. Agencies disagree on whether it counts: guidance in Australia, the United Kingdom and the European Union accepts a high cleat, Canada gives it no credit, and the head of the United States agency said of cords tied high and of cleats in October 2020 that “kids can still strangle”.`,
    cite: cite("cleat-disagreement"),
  };
}
