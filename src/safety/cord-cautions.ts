import { PLACE_NAMES } from "../job/index.ts";
import type { Caution } from "../shade/index.ts";
import { cite } from "../sources/index.ts";
import { lengthText } from "../units/index.ts";
import type { CautionInput } from "./caution-input.ts";
import { hangingText, lowEndText, ringText } from "./hanging-cords.ts";

/** What cords can do to a child, and what this shade's cords are. */
export function cordCautions(input: CautionInput): Caution[] {
  const { brief } = input;
  return [
    {
      id: "children-and-cords",
      title: "Cords and children",
      text: "Window cords strangle small children: silently, within about fifteen seconds, with someone in the next room. Where children live or visit, choose a shade without cords that can be reached from the front, the side or the back. Pets are caught too.",
      cite: cite("cord-hazard-nz", "consciousness lost in about 15 s"),
    },
    {
      id: "cords-of-this-shade",
      title: "The cords of this shade",
      text: `${hangingText(input)}. ${lowEndText(input)}. ${ringText(input)}.`,
      cite: cite("geometry"),
    },
    {
      id: "cords-behind",
      title: "The cords behind",
      text: "A child can pull the cord out between two rings into a loop. Rings close together do not prevent that by themselves: a cord that slides through them feeds the loop, and a light shade rises with it.",
      cite: cite("inner-cord-hazard"),
    },
    {
      id: "never-knot-together",
      title: "Never knot cords together",
      text: "Do not tie cords to each other, to a toy or to furniture, and do not let them twist into one. Tied cords are a loop.",
      cite: cite("cordless-advice"),
    },
    {
      id: "furniture-away",
      title: "Furniture away from the window",
      text: "Keep cots, beds, chairs and anything that can be climbed away from the window and the cords.",
      cite: cite("cordless-advice"),
    },
    {
      id: "cleat",
      title: "A cleat does not remove the hazard",
      text: `Wind the whole of the hanging cord on a cleat in figures of eight, every time, with the cleat ${lengthText(brief.making.lift.cleatAboveFloorMm, brief.units)} or more above the floor. It puts the cords higher and no more than that. Agencies disagree on whether it counts at all.`,
      cite: cite("cleat-disagreement"),
    },
    {
      id: "rules-of-the-place",
      title: "The rules of the place",
      text: `The cords of this shade have not been reviewed against ${rulesText(brief.place)}. A free-hanging pull cord is widely restricted for goods that are sold or given away. Read the rules in force before you sell, give or install.`,
      cite: cite("cord-rules-at-a-glance"),
    },
  ];
}

/** Whose rules, as far as the place was said. */
export function rulesText(place: CautionInput["brief"]["place"]): string {
  if (place === undefined || place === "elsewhere") return "the rules of any place";
  const article = place === "us" || place === "eu" || place === "gb" ? "the " : "";
  return `the rules of ${article}${PLACE_NAMES[place]}`;
}
