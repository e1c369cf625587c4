import type { Finding, Remedy } from "../account/index.ts";
import { type Brief, PLACE_NAMES, PLACES, PURPOSE_NAMES, PURPOSES } from "../job/index.ts";
import { cite } from "../sources/index.ts";
import type { CautionInput } from "./caution-input.ts";
import { rulesText } from "./cord-cautions.ts";
import { hangingText, lowEndText } from "./hanging-cords.ts";

/** What must be asked, and what has not been looked at. */
export function judgeCords(input: CautionInput): Finding[] {
  const { brief } = input;
  return [
    ...(brief.place === undefined ? [placeUnknown(brief)] : []),
    ...(brief.purpose === undefined ? [purposeUnknown(brief)] : []),
    ...(input.lift.cords.length === 0 || input.review !== undefined ? [] : [notReviewed(input)]),
    ...(input.lift.cords.length === 0 ? [] : [freeHanging(input)]),
  ];
}

function base(brief: Brief) {
  return { stage: "safety", shadeId: brief.shadeId } as const;
}

function choices<C extends string>(path: string, values: readonly C[], names: Record<C, string>): Remedy[] {
  return values.map((value) => ({ label: names[value], patch: [{ op: "add", path, value }] }));
}

function placeUnknown(brief: Brief): Finding {
  return {
    ...base(brief),
    id: "safety.place-unknown",
    weight: "unproven",
    path: "/place",
    text: "Where will this shade hang? The rules on cords differ from place to place, and none can be read until it is said.",
    cite: cite("cord-rules-at-a-glance"),
    remedies: choices("/place", PLACES, PLACE_NAMES),
  };
}

function purposeUnknown(brief: Brief): Finding {
  return {
    ...base(brief),
    id: "safety.purpose-unknown",
    weight: "unproven",
    path: "/purpose",
    text: "Whom is this shade for? What is sold, given away or hung in a public building is held to rules that your own home is not. The hazard is the same everywhere.",
    cite: cite("cord-rules-at-a-glance"),
    remedies: choices("/purpose", PURPOSES, PURPOSE_NAMES),
  };
}

function notReviewed({ brief }: CautionInput): Finding {
  return {
    ...base(brief),
    id: "safety.not-reviewed",
    weight: "unproven",
    path: `${brief.path}/shade`,
    text: `Not proven: the cords of this shade have not been reviewed against ${rulesText(brief.place)}. ${restrictedText(brief)} Read the rules in force before it is hung.`,
    cite: cite("cord-rules-at-a-glance"),
    remedies: [],
  };
}

function restrictedText({ purpose }: Brief): string {
  const general = "A free-hanging pull cord is widely restricted for goods that are sold or given away";
  switch (purpose) {
    case "gift":
      return `${general}, and this shade is to be given.`;
    case "for-sale":
      return `${general}, and this shade is to be sold.`;
    case "public-building":
      return `${general}, and this shade is for a public building.`;
    default:
      return `${general}.`;
  }
}

function freeHanging(input: CautionInput): Finding {
  const { brief } = input;
  return {
    ...base(brief),
    id: "safety.free-hanging-cord",
    weight: "mind",
    path: `${brief.path}/shade`,
    text: `${hangingText(input)}. ${lowEndText(input)}. Where children live or visit, choose a shade without cords that can be reached.`,
    cite: cite("cordless-advice"),
    remedies: [],
  };
}
