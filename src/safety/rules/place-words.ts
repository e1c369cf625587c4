import { GOODS_NAMES, type Job, PLACE_NAMES, type Place, type Purpose } from "../../job/index.ts";

export function placeWithArticle(place: Place): string {
  const article = place === "us" || place === "eu" ? "the " : "";
  return `${article}${PLACE_NAMES[place]}`;
}

const PURPOSE_TEXTS: Record<Purpose, string> = {
  "own-home": "for your own home",
  gift: "as a gift",
  "for-sale": "for sale",
  "public-building": "for a public building",
};

export function purposeText(purpose: Purpose): string {
  return PURPOSE_TEXTS[purpose];
}

/** For whom and where shades are made, in one line for the pages: what was not said is said to be so. */
export function madeForText({ place, purpose, goods }: Pick<Job, "place" | "purpose" | "goods">): string {
  const whom = purpose === undefined ? "Made for whom: not said" : `Made ${purposeText(purpose)}`;
  const where = place === undefined ? "place: not said" : PLACE_NAMES[place];
  return [whom, where, ...(goods === undefined ? [] : [GOODS_NAMES[goods].toLowerCase()])].join(", ");
}
