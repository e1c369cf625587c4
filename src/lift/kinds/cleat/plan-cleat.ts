import { lazy, type StageResult, staged } from "../../../figures/index.ts";
import type { LiftTraits } from "../../../job/index.ts";
import type { CleatLift } from "../../../shade-plan/index.ts";
import type { ControlFrame } from "../../control-frame.ts";
import { cordLoads, heldWeight } from "../../cord-loads.ts";
import { judgeLevel } from "../../course/judge-level.ts";
import { planCleatCourse } from "../../course/plan-course.ts";
import { judgePull, unsureShares } from "../../judge-pull.ts";
import { judgeRear } from "../../judge-rear.ts";
import { judgeCordStrength } from "../../judge-strength.ts";
import type { CleatInput } from "../../lift-input.ts";
import { wovenSleeves } from "../../woven-sleeves.ts";
import { cleatCords } from "./cleat-cords.ts";
import { cleatTail, FIGURE_EIGHT } from "./cleat-tail.ts";
import { crowdedLastEye, judgeCleat } from "./judge-cleat.ts";
import { turnEyeOf } from "./turn-eye.ts";

type CleatRig = Omit<CleatLift, "kind" | keyof LiftTraits>;

/** Lift and rig of one shade without a lock: loads, last eye, lengths, pull, tail, and what the cleat holds. */
export function planCleat(input: CleatInput): StageResult<CleatRig> {
  const { shade, size, grid, form, mass } = input;
  const frame: ControlFrame = { side: shade.making.lift.controlSide, head: size };
  const held = heldWeight(grid, form, mass);
  const columnsMm = grid.columns.map(({ xMm }) => xMm);
  const loads = cordLoads(columnsMm, size.finishedWidthMm, held.value);
  const turn = turnEyeOf(input, frame);
  const tail = cleatTail(input, turn);
  const runs = cleatCords(input, turn, loads.designN, tail.values.loweredMm);
  const { cords, totalMm, pullN } = runs.values;
  const sleeves = wovenSleeves(input);
  const course = planCleatCourse(input, { cords, heldN: held.value, pullN });
  const { endLoweredMm, endRaisedMm, toCleatMm, windMm } = tail.values;
  const lift: CleatRig = {
    controlSide: frame.side,
    rearCords: shade.rearCords,
    ...sleeves.values,
    eyeDiameterMm: shade.eye.outsideDiameterMm,
    turn,
    cordId: shade.cord.id,
    cordName: shade.cord.name,
    cordDiameterMm: shade.cord.diameterMm,
    eyes: grid.columns.map(({ xMm }) => ({ xMm, zMm: turn.zMm })),
    cords,
    cordTotalMm: totalMm,
    pullN,
    heldN: held.value,
    holdN: course.values.heights.at(-1)?.holdN ?? 0,
    course: course.values,
    tailLoweredMm: tail.values.loweredMm,
    tailRaisedMm: tail.values.raisedMm,
    ...(endLoweredMm === undefined ? {} : { tailEndAboveFloorLoweredMm: endLoweredMm }),
    ...(endRaisedMm === undefined ? {} : { tailEndAboveFloorRaisedMm: endRaisedMm }),
    ...(toCleatMm === undefined ? {} : { toCleatMm }),
    ...(windMm === undefined ? {} : { windMm, figureEights: Math.floor(windMm / FIGURE_EIGHT.value) }),
  };
  const shares = lazy(() => unsureShares(shade, loads));
  const strength = lazy(() => judgeCordStrength(shade, cords, () => true));
  return staged(lift, {
    findings: () => [
      ...crowdedLastEye(shade, lift),
      ...judgePull(shade, { ...lift, takeUp: "cleat" }),
      ...shares().findings,
      ...strength().findings,
      ...judgeLevel(shade, lift.course, () => true),
      ...judgeCleat(shade, lift, tail.values),
      ...judgeRear(input),
    ],
    workings: () => [
      held,
      ...tail.workings,
      ...runs.workings,
      ...sleeves.workings,
      ...course.workings,
      ...shares().workings,
      ...strength().workings,
    ],
  });
}
