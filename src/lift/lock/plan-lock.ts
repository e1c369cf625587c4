import { lazy, type StageResult, staged, type Worked } from "../../figures/index.ts";
import { type Cord, frictionOf } from "../../job/index.ts";
import { acrossFromControl, alongFromControl, type ControlFrame, placesOnBoard } from "../control-frame.ts";
import { type CordLoads, cordLoads, heldWeight } from "../cord-loads.ts";
import { judgeLevel } from "../course/judge-level.ts";
import { planLockCourse } from "../course/plan-course.ts";
import type { BoardLine } from "../gaps.ts";
import { PULL_LIMITS_N } from "../hard-pull.ts";
import { judgePull, unsureShares } from "../judge-pull.ts";
import { judgeRear } from "../judge-rear.ts";
import { judgeCordStrength } from "../judge-strength.ts";
import type { LockInput } from "../lift-input.ts";
import { lineOfBoard } from "../line-of-board.ts";
import { wovenSleeves } from "../woven-sleeves.ts";
import { cordEntry, levelRunMm } from "./cord-entry.ts";
import { cordRuns } from "./cord-runs.ts";
import { findSeat } from "./find-seat.ts";
import { judgeEntry, LEVEL_ENTRY } from "./judge-entry.ts";
import { judgeFit } from "./judge-fit.ts";
import { judgeHold } from "./judge-hold.ts";
import { judgeRig } from "./judge-rig.ts";
import { judgeSeat, TAIL_IN } from "./judge-seat.ts";
import { judgeTail } from "./judge-tail.ts";
import { lockRoom, misfits } from "./lock-fit.ts";
import { seatFigures, seatOf, slotsOf } from "./lock-parts.ts";
import type { LockRig } from "./lock-rig.ts";
import { ownFit } from "./own-fit.ts";
import { planTail } from "./plan-tail.ts";
import type { RigLayout } from "./rig-threading.ts";
import { slotLayout } from "./slot-layout.ts";
import { verifyRig } from "./verify-rig.ts";

/** Lift and rig of one shade with a cord lock: loads, seat, slots, paths, lengths, pull, tail. */
export function planLock(input: LockInput): StageResult<LockRig> {
  const { shade, size, grid, form, mass } = input;
  const { lock, refused } = input.liftParts;
  const frame: ControlFrame = { side: shade.making.lift.controlSide, head: size };
  const columnsMm = grid.columns.map(({ xMm }) => xMm);
  const held = heldWeight(grid, form, mass);
  const loads = cordLoads(columnsMm, size.finishedWidthMm, held.value);
  const line = lineOfBoard(input, frame, eyesFromControl(grid.columns, frame), lock);
  const rig = rigLayoutOf(input, frame, line, loads);
  const layout = rig.values;
  const seat = findSeat(line, layout, {
    kind: shade.making.lift.seat,
    ruler: shade.units.ruler,
    pullLimitsN: PULL_LIMITS_N,
    hold: {
      eyeApartMm: levelRunMm(lock, shade.eye.outsideDiameterMm, shade.cord.diameterMm, LEVEL_ENTRY.value),
      farthestMm: TAIL_IN.value,
    },
    ...(shade.making.lift.seatMm === undefined
      ? {}
      : { fixedMm: alongFromControl(frame, shade.making.lift.seatMm) }),
  });
  const lockX = acrossFromControl(frame, seat.lockMm);
  const tail = planTail(input, lockX);
  const runs = cordRuns(input, frame, layout, seat, tail.values.loweredMm);
  const { cords, turns, threading, totalMm, pullN } = runs.values;
  const sleeves = wovenSleeves(input);
  const course = planLockCourse(input, { cords, turns, heldN: held.value, pullN });
  const { endLoweredMm, endRaisedMm } = tail.values;
  const entry = cordEntry(lock, shade.eye, layout, seat);
  const lift: LockRig = {
    controlSide: frame.side,
    rearCords: shade.rearCords,
    ...sleeves.values,
    eyeDiameterMm: shade.eye.outsideDiameterMm,
    lockId: lock.id,
    lockName: lock.name,
    ...(refused.length === 0
      ? {}
      : {
          refusedLocks: refused.map(({ lock: other, reason }) => ({
            lockId: other.id,
            lockName: other.name,
            reason,
          })),
        }),
    ...(lock.demo === true ? {} : { ownFit: ownFit(shade.parts, grid.columns.length, shade.cord.id) }),
    cordId: shade.cord.id,
    cordName: shade.cord.name,
    cordDiameterMm: shade.cord.diameterMm,
    housingLengthMm: lock.housingLengthMm,
    housingWidthMm: lock.housingWidthMm,
    housingHeightMm: lock.housingHeightMm,
    ...(lock.endGapMm === undefined ? {} : { endGapMm: lock.endGapMm }),
    entry: entry.values,
    slots: slotsOf(input, seat.threading),
    dividerWires: lock.dividerWires,
    seat: seatOf(input, frame, seat),
    eyes: grid.columns.map(({ xMm }) => ({ xMm, zMm: layout.eyeLineMm })),
    cords,
    threading,
    cordTotalMm: totalMm,
    pullN,
    heldN: held.value,
    course: course.values,
    tailLoweredMm: tail.values.loweredMm,
    tailRaisedMm: tail.values.raisedMm,
    ...(endLoweredMm === undefined ? {} : { tailEndAboveFloorLoweredMm: endLoweredMm }),
    ...(endRaisedMm === undefined ? {} : { tailEndAboveFloorRaisedMm: endRaisedMm }),
  };
  const takes = (cord: Cord) =>
    misfits(lock, cord, grid.columns.length).every(({ severity }) => severity !== "stop");
  const hold = lazy(() => judgeHold(input, loads.designN));
  const shares = lazy(() => unsureShares(shade, loads));
  const strength = lazy(() => judgeCordStrength(shade, cords, takes));
  const faults = () =>
    verifyRig(lift, {
      columnsMm,
      eyeDiameterMm: shade.eye.outsideDiameterMm,
      perSlot: layout.perSlot,
      head: size,
    });
  return staged(lift, {
    findings: () => [
      ...judgeFit(input),
      ...hold().findings,
      ...judgeSeat(input, frame, line, seat),
      ...judgeEntry(input, entry.values),
      ...judgeRig(shade, layout, seat, lift, faults()),
      ...judgePull(shade, { ...lift, takeUp: "lock" }),
      ...shares().findings,
      ...strength().findings,
      ...judgeLevel(shade, lift.course, takes),
      ...judgeTail(shade, lift, tail.values),
      ...judgeRear(input),
    ],
    workings: () => [
      held,
      ...rig.workings,
      ...seatFigures(line, seat.gap),
      ...entry.workings,
      ...tail.workings,
      ...runs.workings,
      ...hold().workings,
      ...sleeves.workings,
      ...course.workings,
      ...shares().workings,
      ...strength().workings,
    ],
  });
}

function eyesFromControl(columns: readonly { xMm: number }[], frame: ControlFrame): number[] {
  const eyes = columns.map(({ xMm }) => alongFromControl(frame, xMm));
  return frame.side === "right" ? eyes.reverse() : eyes;
}

function rigLayoutOf(
  { shade, liftParts: { lock } }: LockInput,
  frame: ControlFrame,
  line: BoardLine,
  loads: CordLoads,
): Worked<RigLayout> {
  const room = lockRoom(lock, shade.cord);
  const { values: layout, workings } = slotLayout(lock, room, line.eyesMm.length, shade.board.depthMm / 2);
  const values: RigLayout = {
    eyesMm: line.eyesMm,
    loadsN: frame.side === "right" ? [...loads.designN].reverse() : loads.designN,
    cordDiameterMm: shade.cord.diameterMm,
    eyeDiameterMm: shade.eye.outsideDiameterMm,
    friction: frictionOf(shade.eye).value,
    housingLengthMm: lock.housingLengthMm,
    eyeLineMm: shade.board.depthMm / 2,
    slotsMm: layout.slotsMm,
    slotPitchMm: layout.pitchMm,
    perSlot: layout.perSlot,
    onBoard: placesOnBoard(frame),
  };
  return { values, workings };
}
