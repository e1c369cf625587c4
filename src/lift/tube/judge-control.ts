import type { Finding, Remedy } from "../../figures/index.ts";
import { type ResolvedShade, settingPatch } from "../../job/index.ts";
import type { LoopLift, MotorLift, SpringLift, TubeLift } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { downToMark, forceText, lengthText, massText } from "../../units/index.ts";
import { EASY_PULL, HARD_PULL, lighterBars } from "../judge-pull.ts";
import { REACH_MM, reachCite } from "../judge-tail.ts";
import { driveAboveFloorMm } from "./control-drop.ts";
import type { TubeInput } from "./tube-input.ts";

/** Hem, wand, loop or motor: can a hand work it, where does it end, and what is not proven? */
export function judgeControl(input: TubeInput, lift: TubeLift): Finding[] {
  switch (lift.kind) {
    case "spring":
      return [springUnproven(input, lift), ...hardPull(input, lift, "at the hem")];
    case "tube-wand":
      return [
        ...hardPull(input, lift, "at the wand"),
        ...reach(input, {
          key: "wandMm",
          what: "wand",
          dropMm: lift.wandMm,
          figure: "rig.wand-end",
        }),
      ];
    case "tube-loop":
      return [
        tensioner(input, lift),
        ...hardPull(input, lift, "on the loop"),
        ...reach(input, { key: "loopDropMm", what: "loop", dropMm: lift.loopDropMm, figure: "rig.loop-end" }),
      ];
    case "motor":
      return [motorPower(input, lift)];
  }
}

function base({ resolved }: { resolved: ResolvedShade }, id: string, key: string) {
  return {
    shadeId: resolved.shadeId,
    id,
    path: `${resolved.path}/shade/making/lift/${key}`,
  } as const;
}

/** Weight grows on the way up, and no even spring follows it: only friction, and the maker's table, can settle it. */
function springUnproven(input: TubeInput, lift: SpringLift): Finding {
  const { resolved, mass, liftParts } = input;
  const text = (forceN: number) => forceText(forceN, resolved.units);
  return {
    ...base(input, "lift.spring-unproven", "drive"),
    stage: "lift",
    severity: "unproven",
    text: `Not proven: whether “${liftParts.drive.name}” holds this shade at every height. The cords carry ${text(lift.heldLoweredN)} lowered and ${text(lift.heldN)} raised, so an even spring set half way is up to ${text(lift.bandN)} off at either end, and friction must hold that. Choose the spring by its maker’s table for ${massText(mass.totalKg, resolved.units)}, and try it with a weight on the bar before the cords are cut short.`,
    cite: cite("geometry", "an even spring set half way between the two torques"),
    figures: ["lift.held-lowered", "lift.held", "lift.spring-band"],
    remedies: [],
  };
}

function hardPull(input: TubeInput, lift: TubeLift, where: string): Finding[] {
  const { resolved } = input;
  if (lift.pullN <= EASY_PULL.value) return [];
  const hard = lift.pullN > HARD_PULL.value;
  const mark = hard ? HARD_PULL : EASY_PULL;
  const text = (forceN: number) => forceText(forceN, resolved.units);
  return [
    {
      ...base(input, "lift.hard-pull", "drive"),
      stage: "lift",
      severity: hard || resolved.purpose === "public-building" ? "fix" : "note",
      text: `Raising it takes about ${text(lift.pullN)} ${where}. ${hard ? `Nearly everyone can pull ${text(mark.value)} with one arm, not everyone more.` : `A pull up to ${text(mark.value)} is easy for one hand.`} A drive with a higher ratio or a larger wheel, a lighter bar or cloth, or two shades side by side make it lighter.`,
      cite: mark.cite,
      figures: ["lift.pull"],
      remedies: lighterBars(resolved),
    },
  ];
}

interface Hanging {
  key: "wandMm" | "loopDropMm";
  what: string;
  dropMm: number;
  figure: string;
}

function reach(input: TubeInput, { key, what, dropMm, figure }: Hanging): Finding[] {
  const driveMm = driveAboveFloorMm(input);
  if (driveMm === undefined) return [];
  const { resolved } = input;
  const endMm = driveMm - dropMm;
  const text = (mm: number) => lengthText(mm, resolved.units);
  if (endMm <= 0) {
    return [
      {
        ...base(input, `rig.${what}-on-floor`, key),
        stage: "rig",
        severity: "stop",
        text: `The ${what} is ${text(dropMm)} long and its drive ${text(Math.max(0, driveMm))} above the floor: it does not fit.`,
        cite: cite("geometry"),
        figures: [figure],
        remedies: dropOf(resolved, key, what, driveMm - resolved.making.lift.cleatAboveFloorMm),
      },
    ];
  }
  if (endMm <= REACH_MM) return [];
  return [
    {
      ...base(input, `rig.${what}-out-of-reach`, key),
      stage: "rig",
      severity: "fix",
      text: `The ${what} ends ${text(endMm)} above the floor, above the reach of many hands.`,
      cite: reachCite,
      figures: [figure],
      remedies: dropOf(resolved, key, what, driveMm - resolved.making.lift.cleatAboveFloorMm),
    },
  ];
}

function dropOf(resolved: ResolvedShade, key: Hanging["key"], what: string, dropMm: number): Remedy[] {
  const marked = downToMark(dropMm, resolved.units.ruler);
  if (marked <= 0) return [];
  return [
    {
      label: `Make the ${what} ${lengthText(marked, resolved.units)} long`,
      patch: settingPatch(resolved, "lift", key, marked),
    },
  ];
}

function tensioner(input: TubeInput, lift: LoopLift): Finding {
  const { units } = input.resolved;
  const end =
    lift.loopEndAboveFloorMm === undefined
      ? "How high that is above the floor is not known"
      : `That is ${lengthText(lift.loopEndAboveFloorMm, units)} above the floor`;
  return {
    ...base(input, "lift.loop-tensioner", "loopDropMm"),
    stage: "lift",
    severity: "note",
    text: `The loop is to be worked only with its lower end held by a tensioner that is screwed to the wall, ${lengthText(lift.loopDropMm, units)} below the drive. ${end}. A loop that hangs free can strangle a child: no tensioner, no loop.`,
    cite: cite("us-a100-1-2022", "a continuous loop asks for a tension device"),
    figures: ["rig.loop-perimeter"],
    remedies: [],
  };
}

function motorPower(input: TubeInput, lift: MotorLift): Finding {
  const words = {
    mains:
      "It is wired by a licensed electrician, by the code of the place and the motor’s own instructions, and never by this plan.",
    "low-voltage":
      "Its charger or power supply is used as its maker says; anything that joins it to the mains is a licensed electrician’s work.",
    unknown:
      "Whether it runs on the mains is not said. If it does, a licensed electrician wires it, by the code of the place and the motor’s own instructions.",
  } as const;
  return {
    ...base(input, "lift.motor-power", "drive"),
    stage: "lift",
    severity: lift.power === "low-voltage" ? "note" : "unproven",
    text: `“${lift.drive.name}” moves by itself. ${words[lift.power ?? "unknown"]} Set its ends of travel by its instructions before the shade is left alone with it.`,
    cite: cite("common-practice", "electrical work by those licensed for it"),
    remedies: [],
  };
}
