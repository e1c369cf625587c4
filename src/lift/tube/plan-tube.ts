import type { StageResult } from "../../figures/index.ts";
import type { TubeLift } from "../../shade-plan/index.ts";
import { cordLoads, heldWeight } from "../cord-loads.ts";
import { wovenSleeves } from "../woven-sleeves.ts";
import { withControl } from "./control.ts";
import { judgeTube } from "./judge-tube.ts";
import { SUPPORT_LENGTH } from "./place-supports.ts";
import { spoolCords } from "./spool-cords.ts";
import { torques } from "./torque.ts";
import { tubeStiffness } from "./tube-bend.ts";
import type { TubeInput } from "./tube-input.ts";
import { type TubeRig, tubeRig } from "./tube-parts.ts";
import { verifyTube } from "./verify-tube.ts";
import { windCords } from "./winding.ts";

/** Lift and rig of one shade with a tube: spools, supports and drive, cords without tails, torque and pull. */
export function planTube(input: TubeInput): StageResult<TubeLift> {
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
  const parts = {
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
  const { values: lift, workings } = withControl(input, parts, {
    wound: wound.values,
    turning: turning.values,
  });
  const faults = verifyTube(lift, {
    columnsMm,
    boardFromMm: (size.finishedWidthMm - size.boardLengthMm) / 2,
    boardToMm: (size.finishedWidthMm + size.boardLengthMm) / 2,
  });
  const judged = judgeTube(input, lift, { rig, wound: wound.values, loads, faults });
  return {
    values: lift,
    findings: judged.findings,
    workings: [
      held,
      ...wound.workings,
      ...turning.workings,
      ...spooled.workings,
      ...sleeves.workings,
      ...workings,
      ...stiff.workings,
      ...judged.workings,
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
