import type { Finding, Remedy } from "../../figures/index.ts";
import { settingPatch } from "../../job/index.ts";
import { cite } from "../../sources/index.ts";
import { downToMark, lengthText, upToMark } from "../../units/index.ts";
import type { LiftShade } from "../lift-input.ts";
import { REACH } from "../reach.ts";
import type { LockRig } from "./lock-rig.ts";
import type { TailPlan } from "./plan-tail.ts";

/** Cord that figure-of-eight turns on a cleat take up at least, mm. */
const ON_CLEAT_MM = 200;

/** Can the tail be reached, does it lie on the floor, does it reach the cleat? Safety is reviewed on its own. */
export function judgeTail(shade: LiftShade, lift: LockRig, tail: TailPlan): Finding[] {
  const lockMm = tail.lockAboveFloorMm;
  if (lockMm === undefined) return [];
  return [
    ...onFloor(shade, lift, lockMm),
    ...outOfReach(shade, lift, lockMm),
    ...shortOfCleat(shade, lift, lockMm),
  ];
}

function base(shade: LiftShade) {
  return {
    stage: "rig",
    shadeId: shade.shadeId,
    path: `${shade.path}/shade/making/lift/tailMm`,
  } as const;
}

function tailOf(shade: LiftShade, tailMm: number, toMark = downToMark): Remedy[] {
  const marked = toMark(tailMm, shade.units.ruler);
  if (marked < 0) return [];
  return [
    {
      label: `Let ${lengthText(marked, shade.units)} hang below the lock`,
      patch: settingPatch(shade, "lift", "tailMm", marked),
    },
  ];
}

function onFloor(shade: LiftShade, lift: LockRig, lockMm: number): Finding[] {
  const lies = lift.tailRaisedMm - lockMm;
  if (lies <= 0) return [];
  return [
    {
      ...base(shade),
      id: "rig.tail-on-floor",
      severity: "fix",
      text: `With the shade raised, ${lengthText(lies, shade.units)} of the tail lies on the floor.`,
      cite: cite("geometry", "the tail grows by the travel"),
      figures: ["rig.tail-raised"],
      remedies: tailOf(shade, lift.tailLoweredMm - lies),
    },
  ];
}

function outOfReach(shade: LiftShade, lift: LockRig, lockMm: number): Finding[] {
  const endMm = lockMm - lift.tailLoweredMm;
  if (endMm <= REACH.value) return [];
  return [
    {
      ...base(shade),
      id: "rig.tail-out-of-reach",
      severity: "fix",
      text: `With the shade lowered the tail ends ${lengthText(endMm, shade.units)} above the floor, above the reach of many hands.`,
      cite: REACH.cite,
      figures: ["rig.tail-end-lowered"],
      remedies: tailOf(shade, lockMm - shade.making.lift.cleatAboveFloorMm),
    },
  ];
}

function shortOfCleat(shade: LiftShade, lift: LockRig, lockMm: number): Finding[] {
  const cleatMm = shade.making.lift.cleatAboveFloorMm;
  const endMm = lockMm - lift.tailRaisedMm;
  if (cleatMm >= lockMm || endMm <= cleatMm - ON_CLEAT_MM) return [];
  return [
    {
      ...base(shade),
      id: "rig.tail-short-of-cleat",
      severity: "note",
      text: `With the shade raised the tail ends ${lengthText(Math.max(0, endMm), shade.units)} above the floor: too short to wind on a cleat at ${lengthText(cleatMm, shade.units)}.`,
      cite: cite("our-choice", "200 mm of cord for the turns on a cleat"),
      figures: ["rig.tail-end-raised"],
      remedies: tailOf(shade, lift.tailLoweredMm + endMm - cleatMm + ON_CLEAT_MM, upToMark),
    },
  ];
}
