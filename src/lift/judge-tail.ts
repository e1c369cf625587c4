import type { Finding, Remedy } from "../figures/index.ts";
import { type ResolvedShade, settingPatch } from "../job/index.ts";
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
    ...onFloor(input.resolved, lift, lockMm),
    ...outOfReach(input.resolved, lift, lockMm),
    ...shortOfCleat(input.resolved, lift, lockMm),
  ];
}

function base(resolved: ResolvedShade) {
  return {
    stage: "rig",
    shadeId: resolved.shadeId,
    path: `${resolved.path}/shade/making/lift/tailMm`,
  } as const;
}

function tailOf(resolved: ResolvedShade, tailMm: number, toMark = downToMark): Remedy[] {
  const marked = toMark(tailMm, resolved.units.ruler);
  if (marked < 0) return [];
  return [
    {
      label: `Let ${lengthText(marked, resolved.units)} hang below the lock`,
      patch: settingPatch(resolved, "lift", "tailMm", marked),
    },
  ];
}

function onFloor(resolved: ResolvedShade, lift: CordLockLift, lockMm: number): Finding[] {
  const lies = lift.tailRaisedMm - lockMm;
  if (lies <= 0) return [];
  return [
    {
      ...base(resolved),
      id: "rig.tail-on-floor",
      severity: "fix",
      text: `With the shade raised, ${lengthText(lies, resolved.units)} of the tail lies on the floor.`,
      cite: cite("geometry", "the tail grows by the travel"),
      figures: ["rig.tail-raised"],
      remedies: tailOf(resolved, lift.tailLoweredMm - lies),
    },
  ];
}

function outOfReach(resolved: ResolvedShade, lift: CordLockLift, lockMm: number): Finding[] {
  const endMm = lockMm - lift.tailLoweredMm;
  if (endMm <= REACH_MM) return [];
  return [
    {
      ...base(resolved),
      id: "rig.tail-out-of-reach",
      severity: "fix",
      text: `With the shade lowered the tail ends ${lengthText(endMm, resolved.units)} above the floor, above the reach of many hands.`,
      cite: reachCite,
      figures: ["rig.tail-end-lowered"],
      remedies: tailOf(resolved, lockMm - resolved.making.lift.cleatAboveFloorMm),
    },
  ];
}

function shortOfCleat(resolved: ResolvedShade, lift: CordLockLift, lockMm: number): Finding[] {
  const cleatMm = resolved.making.lift.cleatAboveFloorMm;
  const endMm = lockMm - lift.tailRaisedMm;
  if (cleatMm >= lockMm || endMm <= cleatMm - ON_CLEAT_MM) return [];
  return [
    {
      ...base(resolved),
      id: "rig.tail-short-of-cleat",
      severity: "note",
      text: `With the shade raised the tail ends ${lengthText(Math.max(0, endMm), resolved.units)} above the floor: too short to wind on a cleat at ${lengthText(cleatMm, resolved.units)}.`,
      cite: cite("our-choice", "200 mm of cord for the turns on a cleat"),
      figures: ["rig.tail-end-raised"],
      remedies: tailOf(resolved, lift.tailLoweredMm + endMm - cleatMm + ON_CLEAT_MM, upToMark),
    },
  ];
}
