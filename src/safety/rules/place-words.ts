import { PLACE_NAMES, type Place, type Purpose } from "../../job/index.ts";

export function placeText(place: Place): string {
  const article = place === "us" || place === "eu" || place === "gb" ? "the " : "";
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
