import type { Finding, Remedy } from "../../../figures/index.ts";
import { EYE_OPENING, type LiftTraits, partChoice, settingPatch } from "../../../job/index.ts";
import type { CleatLift } from "../../../shade-plan/index.ts";
import { cite, sourced } from "../../../sources/index.ts";
import { downToMark, fineText, forceText, lengthText, trimmed, upToMark } from "../../../units/index.ts";
import type { LiftShade } from "../../lift-input.ts";
import { BUNDLE_FILL } from "../../lock/rig-threading.ts";
import { REACH } from "../../reach.ts";
import { type CleatTail, FIGURE_EIGHT } from "./cleat-tail.ts";

type Rig = Omit<CleatLift, "kind" | keyof LiftTraits>;

/** Figures of eight that stay on a cleat of about 100 mm, over its whole bundle of cords. */
const MOST_EIGHTS = sourced(
  8,
  "count",
  cite("from-memory", "more turns than about eight slip off a cleat of 4 in"),
);

/** Does the cord reach its cleat at every height, and stay on it? Safety is reviewed on its own. */
export function judgeCleat(shade: LiftShade, lift: Rig, tail: CleatTail): Finding[] {
  return [heldByCleat(shade, lift), ...aroundCleat(shade, lift, tail)];
}

function base(shade: LiftShade, setting: string) {
  return {
    stage: "rig",
    shadeId: shade.shadeId,
    path: `${shade.path}/shade/making/lift/${setting}`,
  } as const;
}

/** Without a lock nothing stops the shade but the turns on its cleat. */
function heldByCleat(shade: LiftShade, { holdN }: Rig): Finding {
  return {
    ...base(shade, "kind"),
    id: "lift.held-by-cleat",
    severity: "note",
    text: `There is no lock: at every height the shade is held by its cords on the cleat alone, raised with ${forceText(holdN, shade.units)}. Let go, it falls at once.`,
    cite: cite("capstan", "what friction in the eyes leaves of the weight"),
    figures: ["lift.held", "lift.pull"],
    remedies: [],
  };
}

function aroundCleat(shade: LiftShade, lift: Rig, tail: CleatTail): Finding[] {
  const { toCleatMm, eyeAboveFloorMm, windMm } = tail;
  if (toCleatMm === undefined || eyeAboveFloorMm === undefined || windMm === undefined) return [];
  if (toCleatMm <= 0) return [cleatAboveEye(shade, toCleatMm)];
  return [
    ...shortOfCleat(shade, lift, toCleatMm),
    ...outOfReach(shade, lift, eyeAboveFloorMm),
    ...(lift.tailRaisedMm > eyeAboveFloorMm ? [onFloor(shade, lift.tailRaisedMm - eyeAboveFloorMm)] : []),
    ...tooMuchToWind(shade, lift, windMm),
  ];
}

function cleatAboveEye(shade: LiftShade, toCleatMm: number): Finding {
  return {
    ...base(shade, "cleatAboveFloorMm"),
    id: "rig.cleat-above-eye",
    severity: "fix",
    text: `The cleat is planned ${lengthText(-toCleatMm, shade.units)} above the last eye, where no cord comes to it: on a window as low as this no cleat can hold the shade and be out of a child’s reach.`,
    cite: cite("geometry"),
    figures: ["rig.to-cleat"],
    remedies: [
      { label: "Raise it by a spring instead", patch: settingPatch(shade, "lift", "kind", "spring") },
    ],
  };
}

/** Just after it leaves the sill the cord must already go once round the cleat. */
function shortOfCleat(shade: LiftShade, { tailLoweredMm }: Rig, toCleatMm: number): Finding[] {
  const neededMm = toCleatMm + FIGURE_EIGHT.value;
  const shortMm = neededMm - tailLoweredMm;
  if (shortMm < 1) return [];
  const text = (mm: number) => lengthText(mm, shade.units);
  return [
    {
      ...base(shade, "tailMm"),
      id: "rig.tail-short-of-cleat",
      severity: "fix",
      text: `With the shade lowered the cords end ${text(shortMm)} short of one figure of eight on their cleat: until it has risen so far nothing holds it.`,
      cite: FIGURE_EIGHT.cite,
      figures: ["rig.to-cleat"],
      remedies: [tailOf(shade, upToMark(neededMm, shade.units.ruler))],
    },
  ];
}

function tailOf(shade: LiftShade, tailMm: number): Remedy {
  return {
    label: `Let ${lengthText(tailMm, shade.units)} hang below the last eye`,
    patch: settingPatch(shade, "lift", "tailMm", tailMm),
  };
}

function outOfReach(shade: LiftShade, lift: Rig, eyeAboveFloorMm: number): Finding[] {
  const endMm = eyeAboveFloorMm - lift.tailLoweredMm;
  if (endMm <= REACH.value) return [];
  return [
    {
      ...base(shade, "cleatAboveFloorMm"),
      id: "rig.tail-out-of-reach",
      severity: "fix",
      text: `With the shade lowered the cords end ${lengthText(endMm, shade.units)} above the floor, above the reach of many hands.`,
      cite: REACH.cite,
      figures: ["rig.tail-end-lowered"],
      remedies: [tailOf(shade, upToMark(eyeAboveFloorMm - REACH.value, shade.units.ruler))],
    },
  ];
}

function onFloor(shade: LiftShade, liesMm: number): Finding {
  return {
    ...base(shade, "tailMm"),
    id: "rig.tail-on-floor",
    severity: "note",
    text: `Raised and not yet wound, ${lengthText(liesMm, shade.units)} of the cords lies on the floor: wind them on the cleat as the shade goes up, and leave none hanging for a moment.`,
    cite: cite("geometry", "the tail grows by the travel"),
    figures: ["rig.tail-raised"],
    remedies: [],
  };
}

function tooMuchToWind(shade: LiftShade, { cords }: Rig, windMm: number): Finding[] {
  const eights = windMm / FIGURE_EIGHT.value;
  if (eights <= MOST_EIGHTS.value) return [];
  const heldMm = downToMark(MOST_EIGHTS.value * FIGURE_EIGHT.value, shade.units.ruler);
  return [
    {
      ...base(shade, "cleatAboveFloorMm"),
      id: "rig.cleat-full",
      severity: "note",
      text: `With the shade raised ${lengthText(windMm, shade.units)} of ${cords.length === 1 ? "cord goes" : `${cords.length} cords goes`} on the cleat, about ${trimmed(eights, 0)} figures of eight. A cleat of 100 mm (4 in) keeps about ${MOST_EIGHTS.value}, ${lengthText(heldMm, shade.units)}: take a longer cleat, and see that every turn stays on.`,
      cite: MOST_EIGHTS.cite,
      figures: ["rig.cord-to-wind"],
      remedies: [],
    },
  ];
}

/** All cords go through the last eye. */
export function crowdedLastEye(shade: LiftShade, { cords, turn, cordDiameterMm }: Rig): Finding[] {
  const bundleMm = cordDiameterMm * Math.sqrt(cords.length / BUNDLE_FILL.value);
  const openingMm = EYE_OPENING.value * turn.diameterMm;
  if (bundleMm <= openingMm) return [];
  const larger = shade.parts.eyes
    .filter(({ outsideDiameterMm }) => EYE_OPENING.value * outsideDiameterMm >= bundleMm)
    .sort((a, b) => a.outsideDiameterMm - b.outsideDiameterMm)
    .slice(0, 1);
  return [
    {
      ...base(shade, "turnEye"),
      id: "rig.crowded-eye",
      severity: "fix",
      text: `${cords.length} cords of ${fineText(cordDiameterMm)} run through the last eye: a bundle of about ${fineText(bundleMm)} in an opening of about ${fineText(openingMm)}.`,
      cite: BUNDLE_FILL.cite,
      remedies: larger.map(partChoice(shade, "lift", "turnEye", " as the last eye")),
    },
  ];
}
