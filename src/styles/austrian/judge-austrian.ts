import type { Finding } from "../../figures/index.ts";
import { type ResolvedShade, settingPatch, stylePatch } from "../../job/index.ts";
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
export function judgeAustrian(resolved: ResolvedShade, form: Form): Finding[] {
  return [...heavyCloth(resolved), ...pile(resolved), ...thinShirring(resolved), ...pouredOn(resolved, form)];
}

function otherStyle(resolved: ResolvedShade) {
  return {
    label: "Make it a gathered festoon, full at the hem alone",
    patch: stylePatch(resolved, "festoon"),
  };
}

function heavyCloth(resolved: ResolvedShade): Finding[] {
  const { face } = resolved.cloths;
  if (face.massGsm < HEAVY_GSM) return [];
  return [
    {
      ...atShade(resolved, "face"),
      id: "shape.shirred-heavy",
      severity: "fix",
      text: `${face.name} weighs ${arealMassText(face.massGsm, resolved.units)}: a heavy cloth does not shirr into soft swags, and there is ${lengthFullness(resolved)} times its weight on the cords.`,
      cite: cite("cloth-weights", "heavy from 300 g/m²; that it does not shirr is common practice"),
      remedies: [otherStyle(resolved)],
    },
  ];
}

function pile(resolved: ResolvedShade): Finding[] {
  if (resolved.cloths.face.nap !== true) return [];
  return [
    {
      ...atShade(resolved, "face"),
      id: "shape.shirred-pile",
      severity: "fix",
      text: `${resolved.cloths.face.name} has a pile: shirred tight it is crushed along every tape, and the marks stay.`,
      cite: cite("velvet-guide"),
      remedies: [],
    },
  ];
}

function thinShirring(resolved: ResolvedShade): Finding[] {
  const fullness = lengthFullness(resolved);
  const isSheer = resolved.cloths.face.massGsm < SHEER_GSM;
  const usual = isSheer ? 3 : 2;
  if (fullness >= (isSheer ? usual - 0.5 : LEAST_FULLNESS)) return [];
  return [
    {
      ...atShade(resolved, "making/gather/lengthFullness"),
      id: "shape.shirred-thin",
      severity: "note",
      text: `${fullness} times the length is little cloth: published are ${usual} times for ${isSheer ? "a sheer" : "a cloth that is not sheer"}. The swags hang flat.`,
      cite: cite("austrian-2008", "3 times for a sheer, twice for an opaque cloth"),
      remedies: [
        {
          label: `Take ${usual} times the length`,
          patch: settingPatch(resolved, "gather", "lengthFullness", usual),
        },
      ],
    },
  ];
}

/** More than this across a scallop gathers at the head in thick pleats. */
const MOST_ACROSS = 1.75;

function pouredOn(resolved: ResolvedShade, { swags }: Form): Finding[] {
  const [swag] = swags;
  const text = (mm: number) => lengthText(mm, resolved.units);
  if (swag === undefined || swag.arcMm <= MOST_ACROSS * (swag.toMm - swag.fromMm)) return [];
  return [
    {
      ...atShade(resolved, "making/gather/scallopExtraMm"),
      id: "shape.scallop-overfull",
      severity: "note",
      text: `Each scallop has ${(swag.arcMm / (swag.toMm - swag.fromMm)).toFixed(1)} times its width in cloth: ${text(inches(3))} to ${text(inches(4))} beyond the width are published, and more hangs as a bag.`,
      cite: cite("austrian-2008", "3 to 4 in for each scallop"),
      figures: ["shape.gathered-width"],
      remedies: [],
    },
  ];
}
