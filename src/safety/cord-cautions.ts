import { type Caution, hangingCords } from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";
import type { CautionInput } from "./caution-input.ts";
import { backText, frontText } from "./hanging-cords.ts";
import { placeWithArticle } from "./rules/place-words.ts";
import {
  CHILDREN_AND_CORDS,
  CORDS_BEHIND,
  cleatCaution,
  FURNITURE_AWAY,
  NEVER_KNOT,
} from "./usual-cautions.ts";

/** What cords can do to a child, and what this shade's cords are. */
export function cordCautions(input: CautionInput): Caution[] {
  const { shade, lift } = input;
  const hangs = hangingCords(lift).length > 0;
  return [
    CHILDREN_AND_CORDS,
    {
      id: "cords-of-this-shade",
      title: "The cords of this shade",
      text: `${frontText(input)} ${backText(input)}`,
      cite: cite("geometry"),
    },
    CORDS_BEHIND,
    NEVER_KNOT,
    FURNITURE_AWAY,
    ...(hangs ? [cleatCaution(shade)] : []),
    {
      id: "rules-of-the-place",
      title: "The rules of the place",
      text: `${reviewText(input)}${hangs ? " A free-hanging pull cord is widely restricted for goods that are sold or given away." : ""} Read the rules in force before you sell, give or install.`,
      cite: cite("cord-rules-at-a-glance"),
    },
  ];
}

function reviewText({ shade, review }: CautionInput): string {
  return review === undefined
    ? `The cords of this shade have not been reviewed against ${rulesText(shade.place)}.`
    : `${review.line} ${review.against}`;
}

/** Whose rules, as far as the place was said. */
export function rulesText(place: CautionInput["shade"]["place"]): string {
  if (place === undefined || place === "elsewhere") return "the rules of any place";
  return `the rules of ${placeWithArticle(place)}`;
}
