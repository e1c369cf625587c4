import type { Finding } from "../../../figures/index.ts";
import { SHEER_GSM, settingPatch, stylePatch } from "../../../job/index.ts";
import type { Form } from "../../../shade-plan/index.ts";
import { cite } from "../../../sources/index.ts";
import { arealMassText, inches, lengthText } from "../../../units/index.ts";
import { atShade } from "../../base/at-shade.ts";
import type { ShadeWith } from "../../base/style-shade.ts";
import { lengthFullness } from "./austrian-form.ts";

type ShirredShade = ShadeWith<"gather", "cloths">;

/** Heavier than this and cloth does not shirr into soft swags, g/m². */
const HEAVY_GSM = 300;
/** Less cloth than this on the tape hardly shirrs. */
const LEAST_FULLNESS = 1.5;

/** What does not go with shirring, each with the reason. */
export function judgeAustrian(shade: ShirredShade, form: Form): Finding[] {
  return [...heavyCloth(shade), ...pile(shade), ...thinShirring(shade), ...pouredOn(shade, form)];
}

function otherStyle(shade: ShirredShade) {
  return {
    label: "Make it a gathered festoon, full at the hem alone",
    patch: stylePatch(shade, "festoon"),
  };
}

function heavyCloth(shade: ShirredShade): Finding[] {
  const { face } = shade.cloths;
  if (face.massGsm < HEAVY_GSM) return [];
  return [
    {
      ...atShade(shade, "face"),
      id: "shape.shirred-heavy",
      severity: "fix",
      text: `${face.name} weighs ${arealMassText(face.massGsm, shade.units)}: a heavy cloth does not shirr into soft swags, and there is ${lengthFullness(shade)} times its weight on the cords.`,
      cite: cite("cloth-weights", "heavy from 300 g/m²; that it does not shirr is common practice"),
      remedies: [otherStyle(shade)],
    },
  ];
}

function pile(shade: ShirredShade): Finding[] {
  if (shade.cloths.face.nap !== true) return [];
  return [
    {
      ...atShade(shade, "face"),
      id: "shape.shirred-pile",
      severity: "fix",
      text: `${shade.cloths.face.name} has a pile: shirred tight it is crushed along every tape, and the marks stay.`,
      cite: cite("velvet-guide"),
      remedies: [],
    },
  ];
}

function thinShirring(shade: ShirredShade): Finding[] {
  const fullness = lengthFullness(shade);
  const isSheer = shade.cloths.face.massGsm < SHEER_GSM;
  const usual = isSheer ? 3 : 2;
  if (fullness >= (isSheer ? usual - 0.5 : LEAST_FULLNESS)) return [];
  return [
    {
      ...atShade(shade, "making/gather/lengthFullness"),
      id: "shape.shirred-thin",
      severity: "note",
      text: `${fullness} times the length is little cloth: published are ${usual} times for ${isSheer ? "a sheer" : "a cloth that is not sheer"}. The swags hang flat.`,
      cite: cite("austrian-2008", "3 times for a sheer, twice for an opaque cloth"),
      remedies: [
        {
          label: `Take ${usual} times the length`,
          patch: settingPatch(shade, "gather", "lengthFullness", usual),
        },
      ],
    },
  ];
}

/** More than this across a scallop gathers at the head in thick pleats. */
const MOST_ACROSS = 1.75;

function pouredOn(shade: ShirredShade, { swags }: Form): Finding[] {
  const [swag] = swags;
  const text = (mm: number) => lengthText(mm, shade.units);
  if (swag === undefined || swag.arcMm <= MOST_ACROSS * (swag.toMm - swag.fromMm)) return [];
  return [
    {
      ...atShade(shade, "making/gather/scallopExtraMm"),
      id: "shape.scallop-overfull",
      severity: "note",
      text: `Each scallop has ${(swag.arcMm / (swag.toMm - swag.fromMm)).toFixed(1)} times its width in cloth: ${text(inches(3))} to ${text(inches(4))} beyond the width are published, and more hangs as a bag.`,
      cite: cite("austrian-2008", "3 to 4 in for each scallop"),
      figures: ["shape.gathered-width"],
      remedies: [],
    },
  ];
}
