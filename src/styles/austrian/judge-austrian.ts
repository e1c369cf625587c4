import type { Finding } from "../../figures/index.ts";
import { type Brief, settingPatch, stylePatch } from "../../job/index.ts";
import type { Form } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { arealMassText, inches, lengthText } from "../../units/index.ts";
import { atShade } from "../at-shade.ts";
import { lengthFullness, SHEER_GSM } from "./austrian-form.ts";

/** Heavier than this and cloth does not shirr into soft swags, g/m². */
const HEAVY_GSM = 300;
/** Less cloth than this on the tape hardly shirrs. */
const LEAST_FULLNESS = 1.5;

/** What does not go with shirring, each with the reason. */
export function judgeAustrian(brief: Brief, form: Form): Finding[] {
  return [...heavyCloth(brief), ...pile(brief), ...thinShirring(brief), ...pouredOn(brief, form)];
}

function otherStyle(brief: Brief) {
  return {
    label: "Make it a gathered festoon, full at the hem alone",
    patch: stylePatch(brief, "festoon"),
  };
}

function heavyCloth(brief: Brief): Finding[] {
  const { face } = brief.cloths;
  if (face.massGsm < HEAVY_GSM) return [];
  return [
    {
      ...atShade(brief, "face"),
      id: "shape.shirred-heavy",
      weight: "fix",
      text: `${face.name} weighs ${arealMassText(face.massGsm, brief.units)}: a heavy cloth does not shirr into soft swags, and there is ${lengthFullness(brief)} times its weight on the cords.`,
      cite: cite("cloth-weights", "heavy from 300 g/m²; that it does not shirr is common practice"),
      remedies: [otherStyle(brief)],
    },
  ];
}

function pile(brief: Brief): Finding[] {
  if (brief.cloths.face.nap !== true) return [];
  return [
    {
      ...atShade(brief, "face"),
      id: "shape.shirred-pile",
      weight: "fix",
      text: `${brief.cloths.face.name} has a pile: shirred tight it is crushed along every tape, and the marks stay.`,
      cite: cite("velvet-guide"),
      remedies: [],
    },
  ];
}

function thinShirring(brief: Brief): Finding[] {
  const fullness = lengthFullness(brief);
  const isSheer = brief.cloths.face.massGsm < SHEER_GSM;
  const usual = isSheer ? 3 : 2;
  if (fullness >= (isSheer ? usual - 0.5 : LEAST_FULLNESS)) return [];
  return [
    {
      ...atShade(brief, "making/gather/lengthFullness"),
      id: "shape.shirred-thin",
      weight: "mind",
      text: `${fullness} times the length is little cloth: published are ${usual} times for ${isSheer ? "a sheer" : "a cloth that is not sheer"}. The swags hang flat.`,
      cite: cite("austrian-2008", "3 times for a sheer, twice for an opaque cloth"),
      remedies: [
        {
          label: `Take ${usual} times the length`,
          patch: settingPatch(brief, "gather", "lengthFullness", usual),
        },
      ],
    },
  ];
}

/** More than this across a scallop gathers at the head in thick pleats. */
const MOST_ACROSS = 1.75;

function pouredOn(brief: Brief, { swags }: Form): Finding[] {
  const [swag] = swags;
  const text = (mm: number) => lengthText(mm, brief.units);
  if (swag === undefined || swag.arcMm <= MOST_ACROSS * (swag.toMm - swag.fromMm)) return [];
  return [
    {
      ...atShade(brief, "making/gather/scallopExtraMm"),
      id: "shape.scallop-overfull",
      weight: "mind",
      text: `Each scallop has ${(swag.arcMm / (swag.toMm - swag.fromMm)).toFixed(1)} times its width in cloth: ${text(inches(3))} to ${text(inches(4))} beyond the width are published, and more hangs as a bag.`,
      cite: cite("austrian-2008", "3 to 4 in for each scallop"),
      figures: ["shape.gathered-width"],
      remedies: [],
    },
  ];
}
