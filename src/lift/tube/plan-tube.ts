import type { Worked } from "../../figures/index.ts";
import type { LiftTraits } from "../../job/index.ts";
import type { MotorLift } from "../../shade-plan/index.ts";
import { type CordLoads, cordLoads, heldWeight } from "../cord-loads.ts";
import type { TubeInput } from "../lift-input.ts";
import { wovenSleeves } from "../woven-sleeves.ts";
import { SUPPORT_LENGTH } from "./place-supports.ts";
import { spoolCords } from "./spool-cords.ts";
import { type Torques, torques } from "./torque.ts";
import { tubeStiffness } from "./tube-bend.ts";
import { type TubeRig, tubeRig } from "./tube-parts.ts";
import { type Wound, windCords } from "./winding.ts";

/** A lift with a tube but for what turns the tube and what the hand works. */
export type TubeParts = Omit<
  MotorLift,
  "kind" | "pullN" | "power" | "raiseSeconds" | "course" | keyof LiftTraits
>;

/** What lies under the board, how its cords wind, and what that asks of the drive. */
export interface TubePlan {
  parts: TubeParts;
  rig: TubeRig;
  wound: Wound;
  turning: Torques;
  loads: CordLoads;
}

/** What all lifts with a tube share: spools, supports and drive, cords without tails, torque. */
export function planTube(input: TubeInput): Worked<TubePlan> {
  const { shade, size, grid, form, mass } = input;
  const columnsMm = grid.columns.map(({ xMm }) => xMm);
  const held = heldWeight(grid, form, mass);
  const loads = cordLoads(columnsMm, size.finishedWidthMm, held.value);
  const rig = tubeRig(input);
  const wound = windCords(input);
  const turning = torques(input, held.value, wound.values);
  const spooled = spoolCords(input, loads.designN, wound.values);
  const sleeves = wovenSleeves(input);
  const { cords, totalMm } = spooled.values;
  const stiff = tubeStiffness(
    input.liftParts.tube,
    { ...rig, driveMm: rig.drive.xMm },
    cords.map(({ loadN }) => loadN),
    wound.values.raisedMm,
  );
  const parts: TubeParts = {
    controlSide: shade.making.lift.controlSide,
    rearCords: shade.rearCords,
    ...sleeves.values,
    cordId: shade.cord.id,
    cordName: shade.cord.name,
    cordDiameterMm: shade.cord.diameterMm,
    eyes: [],
    cordTotalMm: totalMm,
    heldN: held.value,
    cords,
    ...rigParts(input, rig),
    wrapsLeft: wound.values.wrapsLeft,
    woundLoweredMm: wound.values.loweredMm,
    woundRaisedMm: wound.values.raisedMm,
    turns: wound.values.turns,
    heldLoweredN: turning.values.heldLoweredN,
    torqueLoweredNm: turning.values.loweredNm,
    torqueRaisedNm: turning.values.raisedNm,
    ...(stiff.values === undefined ? {} : { stiffness: stiff.values }),
  };
  return {
    values: { parts, rig, wound: wound.values, turning: turning.values, loads },
    workings: [
      held,
      ...wound.workings,
      ...turning.workings,
      ...spooled.workings,
      ...sleeves.workings,
      ...stiff.workings,
    ],
  };
}

function rigParts({ liftParts }: TubeInput, { tube, spools, supports, drive }: TubeRig) {
  return {
    tube,
    spools,
    supports,
    supportLengthMm: SUPPORT_LENGTH.value,
    drive,
    ...(liftParts.refused.length === 0
      ? {}
      : {
          refusedDrives: liftParts.refused.map(({ drive: other, reason }) => ({
            driveId: other.id,
            driveName: other.name,
            reason,
          })),
        }),
    heightMm: liftParts.heightMm,
  };
}
