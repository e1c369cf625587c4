import type { Finding, Remedy } from "../figures/index.ts";
import { type Brief, settingPatch } from "../job/index.ts";
import type { CordLockLift } from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";
import { downToMark, lengthText, upToMark } from "../units/index.ts";
import type { LiftInput } from "./lift-input.ts";
import type { TailPlan } from "./plan-tail.ts";

/** Highest that a hand takes hold of a cord without a stool, above the floor, mm. */
export const REACH_MM = 1900;
export const reachCite = cite("our-choice", "1.9 m reach without a stool");
/** Cord that figure-of-eight turns on a cleat take up at least, mm. */
const ON_CLEAT_MM = 200;

/** Can the tail be reached, does it lie on the floor, does it reach the cleat? Safety is reviewed on its own. */
export function judgeTail(input: LiftInput, lift: CordLockLift, tail: TailPlan): Finding[] {
  const lockMm = tail.lockAboveFloorMm;
  if (lockMm === undefined) return [];
  return [
    ...onFloor(input.brief, lift, lockMm),
    ...outOfReach(input.brief, lift, lockMm),
    ...shortOfCleat(input.brief, lift, lockMm),
  ];
}

function base(brief: Brief) {
  return { stage: "rig", shadeId: brief.shadeId, path: `${brief.path}/shade/making/lift/tailMm` } as const;
}

function tailOf(brief: Brief, tailMm: number, toMark = downToMark): Remedy[] {
  const marked = toMark(tailMm, brief.units.ruler);
  if (marked < 0) return [];
  return [
    {
      label: `Let ${lengthText(marked, brief.units)} hang below the lock`,
      patch: settingPatch(brief, "lift", "tailMm", marked),
    },
  ];
}

function onFloor(brief: Brief, lift: CordLockLift, lockMm: number): Finding[] {
  const lies = lift.tailRaisedMm - lockMm;
  if (lies <= 0) return [];
  return [
    {
      ...base(brief),
      id: "rig.tail-on-floor",
      weight: "fix",
      text: `With the shade raised, ${lengthText(lies, brief.units)} of the tail lies on the floor.`,
      cite: cite("geometry", "the tail grows by the travel"),
      figures: ["rig.tail-raised"],
      remedies: tailOf(brief, lift.tailLoweredMm - lies),
    },
  ];
}

function outOfReach(brief: Brief, lift: CordLockLift, lockMm: number): Finding[] {
  const endMm = lockMm - lift.tailLoweredMm;
  if (endMm <= REACH_MM) return [];
  return [
    {
      ...base(brief),
      id: "rig.tail-out-of-reach",
      weight: "fix",
      text: `With the shade lowered the tail ends ${lengthText(endMm, brief.units)} above the floor, above the reach of many hands.`,
      cite: reachCite,
      figures: ["rig.tail-end-lowered"],
      remedies: tailOf(brief, lockMm - brief.making.lift.cleatAboveFloorMm),
    },
  ];
}

function shortOfCleat(brief: Brief, lift: CordLockLift, lockMm: number): Finding[] {
  const cleatMm = brief.making.lift.cleatAboveFloorMm;
  const endMm = lockMm - lift.tailRaisedMm;
  if (cleatMm >= lockMm || endMm <= cleatMm - ON_CLEAT_MM) return [];
  return [
    {
      ...base(brief),
      id: "rig.tail-short-of-cleat",
      weight: "mind",
      text: `With the shade raised the tail ends ${lengthText(Math.max(0, endMm), brief.units)} above the floor: too short to wind on a cleat at ${lengthText(cleatMm, brief.units)}.`,
      cite: cite("our-choice", "200 mm of cord for the turns on a cleat"),
      figures: ["rig.tail-end-raised"],
      remedies: tailOf(brief, lift.tailLoweredMm + endMm - cleatMm + ON_CLEAT_MM, upToMark),
    },
  ];
}
