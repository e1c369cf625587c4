import { figureRule, staged } from "../../../figures/index.ts";
import { LIFT_TRAITS } from "../../../job/index.ts";
import type { LoopLift } from "../../../shade-plan/index.ts";
import { cite, sourced } from "../../../sources/index.ts";
import { planTubeCourse } from "../../course/plan-course.ts";
import { tubeInput } from "../../lift-input.ts";
import { searchTubes } from "../../search/search-tubes.ts";
import { chooseTubeLiftParts } from "../../tube/choose-tube-lift-parts.ts";
import { controlDrop, driveBelowTopMm, endAboveFloor, type HangingControl } from "../../tube/control-drop.ts";
import { handPull, handPullN, pullWithTorque } from "../../tube/hand-pull.ts";
import { hardHandPull } from "../../tube/hard-hand-pull.ts";
import { judgeReach } from "../../tube/judge-reach.ts";
import { judgeTube } from "../../tube/judge-tube.ts";
import { planTube } from "../../tube/plan-tube.ts";
import type { LiftKindModule } from "../lift-kind.ts";
import { tensioner } from "./tensioner.ts";

/** Where the maker of the drive gives none. */
const WHEEL = sourced(30, "mm", cite("our-choice", "a small wheel; measure your own"));

const PERIMETER = figureRule({
  id: "rig.loop-perimeter",
  label: "Loop: length all round",
  symbol: "o",
  unit: "mm",
  formula: "2·p + (π − 1)·D",
  inputs: {
    p: ["mm", "from the drive’s axis to the lowest point", "lift/loopDropMm", "figure:rig.loop"],
    D: ["mm", "wheel of the drive, and the tensioner’s the same", "lift/drive"],
  },
  cite: cite("geometry", "round two wheels alike"),
  note: "the tensioner’s own instructions say how a loop is joined",
  compute: ({ p, D }) => 2 * p + (Math.PI - 1) * D,
});

const LOOP_TRAVEL = figureRule({
  id: "rig.loop-travel",
  label: "Loop to pull from lowered to raised",
  symbol: "q",
  unit: "mm",
  formula: "N·i·π·D",
  inputs: {
    N: ["count", "turns of the tube", "figure:lift.turns"],
    i: ["ratio", "turns of the wheel for one of the tube", "lift/drive"],
    D: ["mm", "wheel of the drive", "lift/drive"],
  },
  cite: cite("geometry"),
  compute: ({ N, i, D }) => N * i * Math.PI * D,
});

const LOOP: HangingControl = {
  what: "loop",
  key: "loopDropMm",
  drop: "Loop, from the drive down to its lowest point",
  end: "Loop’s lowest point",
};

/** A continuous loop turns the tube; a tensioner fixed to the wall holds its lower end. */
export const tubeLoop: LiftKindModule<LoopLift> = {
  chooseParts: (input) => chooseTubeLiftParts(input, "tube-loop"),
  plan(given) {
    const input = tubeInput(given);
    const { drive } = input.liftParts;
    const planned = planTube(input);
    const { parts, turning, wound } = planned.values;
    const wheelMm = drive.wheelMm ?? WHEEL.value;
    const drop = controlDrop(input, LOOP, parts.drive.xMm);
    const end = endAboveFloor(input, drop.values, LOOP, parts.drive.xMm);
    const perimeter = PERIMETER.figure({ p: drop.values, D: wheelMm });
    const travel = LOOP_TRAVEL.figure({ N: wound.turns, i: drive.ratio, D: wheelMm });
    const pull = handPull(turning, drive, {
      label: "Pull on the loop, where it is greatest",
      radiusMm: wheelMm / 2,
      radiusLabel: "radius of the wheel",
    });
    const course = planTubeCourse(input, parts, pullWithTorque(pull.value, turning));
    const lift: LoopLift = {
      ...parts,
      kind: "tube-loop",
      ...LIFT_TRAITS["tube-loop"],
      wheelMm,
      loopDropMm: drop.values,
      loopExitBelowTopMm: driveBelowTopMm(input, parts.drive.xMm),
      loopPerimeterMm: perimeter.value,
      loopTravelMm: travel.value,
      ...(input.shade.making.lift.loopJoint === "breakaway" ? { breakaway: true } : {}),
      ...(end === undefined ? {} : { loopEndAboveFloorMm: end.value }),
      pullN: pull.value,
      course: course.values,
    };
    const judged = judgeTube(input, lift, planned.values);
    return staged(lift, {
      findings: () => [
        ...judged.findings,
        tensioner(input, lift),
        ...hardHandPull(input, lift, "on the loop"),
        ...judgeReach(input, LOOP, { dropMm: lift.loopDropMm, driveX: lift.drive.xMm }),
      ],
      workings: () => [
        ...planned.workings,
        ...drop.workings,
        ...(end === undefined ? [] : [end]),
        perimeter,
        travel,
        pull,
        ...course.workings,
        ...judged.workings,
      ],
    });
  },
  search: (need, shelf, most) =>
    searchTubes(need, shelf, most, {
      kind: "tube-loop",
      handPullN: (drive, turning) => handPullN(turning, drive, (drive.wheelMm ?? WHEEL.value) / 2),
    }),
};
