import { figureRule, staged } from "../../../figures/index.ts";
import { LIFT_TRAITS } from "../../../job/index.ts";
import type { WandLift } from "../../../shade-plan/index.ts";
import { cite, sourced } from "../../../sources/index.ts";
import { planTubeCourse } from "../../course/plan-course.ts";
import { tubeInput } from "../../lift-input.ts";
import { searchTubes } from "../../search/search-tubes.ts";
import { chooseTubeLiftParts } from "../../tube/choose-tube-lift-parts.ts";
import { controlDrop, endAboveFloor, type HangingControl } from "../../tube/control-drop.ts";
import { handPull, handPullN, pullWithTorque } from "../../tube/hand-pull.ts";
import { hardHandPull } from "../../tube/hard-hand-pull.ts";
import { judgeReach } from "../../tube/judge-reach.ts";
import { judgeTube } from "../../tube/judge-tube.ts";
import { planTube } from "../../tube/plan-tube.ts";
import type { LiftKindModule } from "../lift-kind.ts";

/** Where the maker of the drive gives none. */
const WAND_RADIUS = sourced(
  8,
  "mm",
  cite("our-choice", "a plain wand of 16 mm, twisted between the fingers"),
);

const HAND_TURNS = figureRule({
  id: "lift.hand-turns",
  label: "Turns of the wand from lowered to raised",
  symbol: "n",
  unit: "count",
  formula: "N·i",
  inputs: {
    N: ["count", "turns of the tube", "figure:lift.turns"],
    i: ["ratio", "turns of the wand for one of the tube", "lift/drive"],
  },
  cite: cite("arithmetic"),
  compute: ({ N, i }) => N * i,
});

const WAND: HangingControl = {
  what: "wand",
  key: "wandMm",
  drop: "Wand below its drive",
  end: "Wand’s end",
};

/** A rigid wand turns the tube. */
export const tubeWand: LiftKindModule<WandLift> = {
  chooseParts: (input) => chooseTubeLiftParts(input, "tube-wand"),
  plan(given) {
    const input = tubeInput(given);
    const planned = planTube(input);
    const { parts, turning, wound } = planned.values;
    const { drive } = input.liftParts;
    const crankMm = drive.crankMm ?? WAND_RADIUS.value;
    const drop = controlDrop(input, WAND, parts.drive.xMm);
    const end = endAboveFloor(input, drop.values, WAND, parts.drive.xMm);
    const handTurns = HAND_TURNS.figure({ N: wound.turns, i: drive.ratio });
    const pull = handPull(turning, drive, {
      label: "Push at the crank, where it is greatest",
      radiusMm: crankMm,
      radiusLabel: drive.crankMm === undefined ? "radius of a plain wand" : "radius of the crank",
    });
    const course = planTubeCourse(input, parts, pullWithTorque(pull.value, turning));
    const lift: WandLift = {
      ...parts,
      kind: "tube-wand",
      ...LIFT_TRAITS["tube-wand"],
      wandMm: drop.values,
      detachable: drive.detachable ?? false,
      crankMm,
      handTurns: handTurns.value,
      ...(end === undefined ? {} : { wandEndAboveFloorMm: end.value }),
      pullN: pull.value,
      course: course.values,
    };
    const judged = judgeTube(input, lift, planned.values);
    return staged(lift, {
      findings: () => [
        ...judged.findings,
        ...hardHandPull(input, lift, "at the wand"),
        ...judgeReach(input, WAND, { dropMm: lift.wandMm, driveX: lift.drive.xMm }),
      ],
      workings: () => [
        ...planned.workings,
        ...drop.workings,
        ...(end === undefined ? [] : [end]),
        handTurns,
        pull,
        ...course.workings,
        ...judged.workings,
      ],
    });
  },
  search: (need, shelf, most) =>
    searchTubes(need, shelf, most, {
      kind: "tube-wand",
      handPullN: (drive, turning) => handPullN(turning, drive, drive.crankMm ?? WAND_RADIUS.value),
    }),
};
