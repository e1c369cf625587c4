import type { Finding, WorkingBook } from "../../figures/index.ts";
import type { TubeLift } from "../../shade-plan/index.ts";
import { cordLoads, heldWeight } from "../cord-loads.ts";
import { wovenSleeves } from "../woven-sleeves.ts";
import { withControl } from "./control.ts";
import { judgeTube } from "./judge-tube.ts";
import { SUPPORT_LENGTH } from "./place-supports.ts";
import { spoolCords } from "./spool-cords.ts";
import { torques } from "./torque.ts";
import type { TubeInput } from "./tube-input.ts";
import { type TubeRig, tubeRig } from "./tube-parts.ts";
import { verifyTube } from "./verify-tube.ts";
import { windCords } from "./winding.ts";

/** Lift and rig of one shade with a tube: spools, supports and drive, cords without tails, torque and pull. */
export function planTube(input: TubeInput, book: WorkingBook): { lift: TubeLift; findings: Finding[] } {
  const { resolved, size, grid, mass } = input;
  const heldN = heldWeight(grid, input.form, mass, book);
  const loads = cordLoads(
    grid.columns.map(({ xMm }) => xMm),
    size.finishedWidthMm,
    heldN,
  );
  const rig = tubeRig(input);
  const wound = windCords(input, book);
  const turning = torques(input, heldN, wound, book);
  const { cords, totalMm } = spoolCords(input, loads.designN, wound, book);
  const parts = {
    controlSide: resolved.making.lift.controlSide,
    rearCords: resolved.rearCords,
    ...wovenSleeves(input, book),
    cordId: resolved.cord.id,
    cordName: resolved.cord.name,
    cordDiameterMm: resolved.cord.diameterMm,
    eyes: [],
    cordTotalMm: totalMm,
    heldN,
    cords,
    ...rigParts(input, rig),
    wrapsLeft: wound.wrapsLeft,
    woundLoweredMm: wound.loweredMm,
    woundRaisedMm: wound.raisedMm,
    turns: wound.turns,
    heldLoweredN: turning.heldLoweredN,
    torqueLoweredNm: turning.loweredNm,
    torqueRaisedNm: turning.raisedNm,
  };
  const lift = withControl(input, parts, { wound, turning }, book);
  const faults = verifyTube(lift, {
    columnsMm: grid.columns.map(({ xMm }) => xMm),
    boardFromMm: (size.finishedWidthMm - size.boardLengthMm) / 2,
    boardToMm: (size.finishedWidthMm + size.boardLengthMm) / 2,
  });
  return { lift, findings: judgeTube(input, lift, { rig, wound, loads, faults }, book) };
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
