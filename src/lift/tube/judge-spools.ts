import type { Finding, Remedy } from "../../figures/index.ts";
import { partChoice } from "../../job/index.ts";
import type { TubeLift } from "../../shade-plan/index.ts";
import { cite, sourced } from "../../sources/index.ts";
import { fineText, forceText, N_PER_POUND_FORCE, smallLengthText } from "../../units/index.ts";
import type { TubeInput } from "../lift-input.ts";
import { TUBE_BEND, TUBE_TWIST } from "./tube-bend.ts";
import type { Wound } from "./winding.ts";

/** What one sheet allows on the cord of one spool. */
const PER_CORD = sourced(5 * N_PER_POUND_FORCE, "N", cite("clutch-sheet", "at most 5 lb a cord"));

/** Do the spools hold the cord, and does the tube stay straight? */
export function judgeSpools(input: TubeInput, lift: TubeLift, wound: Wound): Finding[] {
  return [...spoolFull(input, lift, wound), ...heavyCord(input, lift), ...bend(input, lift)];
}

function spoolFull(input: TubeInput, lift: TubeLift, { winding, raisedMm }: Wound): Finding[] {
  const { shade, liftParts } = input;
  const woundMm = 2 * raisedMm + winding.cordDiameterMm;
  if (woundMm <= liftParts.spool.flangeMm) return [];
  const thinner: Remedy[] = shade.parts.cords
    .filter(({ diameterMm }) => diameterMm < shade.cord.diameterMm)
    .slice(0, 1)
    .map(partChoice(shade, "lift", "cord"));
  const larger: Remedy[] = shade.parts.tubes
    .filter((tube) => tube.id !== liftParts.tube.id && (tube.spoolFlangeMm ?? 0) > liftParts.spool.flangeMm)
    .slice(0, 1)
    .map(partChoice(shade, "lift", "tube"));
  return [
    {
      stage: "rig",
      shadeId: shade.shadeId,
      id: "rig.spool-full",
      severity: "fix",
      path: `${shade.path}/shade/making/lift/tube`,
      text: `With the shade raised the cord on a spool of “${lift.tube.name}” is ${fineText(woundMm)} across, and the flanges are ${fineText(liftParts.spool.flangeMm)}: it would spill over.`,
      cite: cite("geometry", "Archimedean spiral that grows by one cord for each layer"),
      figures: ["lift.wound-raised"],
      remedies: [...thinner, ...larger],
    },
  ];
}

function heavyCord({ shade }: TubeInput, lift: TubeLift): Finding[] {
  const heaviest = lift.cords.reduce((most, { loadN }) => Math.max(most, loadN), 0);
  if (heaviest <= PER_CORD.value) return [];
  const text = (forceN: number) => forceText(forceN, shade.units);
  return [
    {
      stage: "lift",
      shadeId: shade.shadeId,
      id: "lift.heavy-spool",
      severity: "note",
      path: `${shade.path}/shade/making/columns`,
      text: `One spool carries up to ${text(heaviest)}. The one sheet that was read allows ${text(PER_CORD.value)} for each cord; ask the maker of yours. More columns share the weight.`,
      cite: PER_CORD.cite,
      figures: ["lift.heaviest-cord"],
      remedies: [],
    },
  ];
}

function bend(input: TubeInput, lift: TubeLift): Finding[] {
  const { shade, liftParts } = input;
  if (lift.stiffness === undefined) return [unknownTube(input, lift)];
  const { bendMm, twistMm } = lift.stiffness;
  const bends = bendMm > TUBE_BEND.value;
  if (!bends && twistMm <= TUBE_TWIST.value) return [];
  const text = (mm: number) => smallLengthText(mm, shade.units);
  const thicker: Remedy[] = shade.parts.tubes
    .filter(({ diameterMm, wallMm }) => diameterMm > liftParts.tube.diameterMm && wallMm !== undefined)
    .sort((a, b) => a.diameterMm - b.diameterMm)
    .slice(0, 1)
    .map(partChoice(shade, "lift", "tube"));
  return [
    {
      stage: "rig",
      shadeId: shade.shadeId,
      id: bends ? "rig.tube-bends" : "rig.tube-twists",
      severity: "fix",
      path: `${shade.path}/shade/making/lift/tube`,
      text: bends
        ? `“${lift.tube.name}” bends ${text(bendMm)} between its supports under the raised shade; beyond ${text(TUBE_BEND.value)} spools begin to rub. A thicker tube, or another support, helps.`
        : `“${lift.tube.name}” twists so far under the raised shade that the hem hangs ${text(twistMm)} out of level. A thicker tube helps, or a drive nearer to the middle.`,
      cite: cite("beam-theory"),
      figures: [bends ? "lift.tube-bend" : "lift.tube-twist"],
      remedies: thicker,
    },
  ];
}

function unknownTube({ shade }: TubeInput, lift: TubeLift): Finding {
  return {
    stage: "rig",
    shadeId: shade.shadeId,
    id: "rig.tube-not-judged",
    severity: "unproven",
    path: `${shade.path}/shade/making/lift/tube`,
    text: `The wall of “${lift.tube.name}” is not given, so how far it bends and twists is not judged. Measure it, or keep to what its maker allows for ${forceText(lift.heldN, shade.units)} on ${lift.spools.length} ${lift.spools.length === 1 ? "spool" : "spools"}.`,
    cite: cite("our-choice", "nothing is assumed"),
    figures: ["lift.held"],
    remedies: [],
  };
}
