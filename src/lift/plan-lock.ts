import type { Finding, WorkingBook } from "../figures/index.ts";
import type { Cord } from "../job/index.ts";
import type { CordLockLift } from "../shade-plan/index.ts";
import { chooseLock } from "./choose-lock.ts";
import type { ControlFrame } from "./control-frame.ts";
import { mirrored } from "./control-frame.ts";
import { type CordLoads, cordLoads, heldWeight } from "./cord-loads.ts";
import { cordRuns } from "./cord-runs.ts";
import { judgeLevel } from "./course/judge-level.ts";
import { planLockCourse } from "./course/plan-course.ts";
import { findSeat } from "./find-seat.ts";
import type { BoardLine } from "./gaps.ts";
import { judgeFit } from "./judge-fit.ts";
import { judgePull } from "./judge-pull.ts";
import { judgeRear } from "./judge-rear.ts";
import { judgeRig } from "./judge-rig.ts";
import { judgeSeat } from "./judge-seat.ts";
import { judgeStrength } from "./judge-strength.ts";
import { judgeTail } from "./judge-tail.ts";
import type { LiftInput } from "./lift-input.ts";
import { lockRoom, misfits } from "./lock-fit.ts";
import { seatFigures, seatOf, slotsOf } from "./lock-parts.ts";
import { planTail } from "./plan-tail.ts";
import { frictionOf, type RigLayout } from "./rig-threading.ts";
import { slotLayout } from "./slot-layout.ts";
import { verifyRig } from "./verify-rig.ts";
import { wovenSleeves } from "./woven-sleeves.ts";

/** Lift and rig of one shade with a cord lock: loads, seat, slots, paths, lengths, pull, tail. */
export function planLock(input: LiftInput, book: WorkingBook): { lift: CordLockLift; findings: Finding[] } {
  const { resolved, size, grid, mass, lock } = input;
  const frame: ControlFrame = { side: resolved.making.lift.controlSide, widthMm: size.finishedWidthMm };
  const heldN = heldWeight(grid, input.form, mass, book);
  const loads = cordLoads(
    grid.columns.map(({ xMm }) => xMm),
    size.finishedWidthMm,
    heldN,
  );
  const line = boardLine(input, frame);
  const layout = rigLayoutOf(input, frame, line, loads, book);
  const seat = findSeat(line, layout, {
    kind: resolved.making.lift.seat,
    ruler: resolved.units.ruler,
    ...(resolved.making.lift.seatMm === undefined
      ? {}
      : { fixedMm: mirrored(frame, resolved.making.lift.seatMm) }),
  });
  seatFigures(line, seat.gap, book);
  const tail = planTail(input, book);
  const runs = cordRuns(input, frame, layout, seat, tail.loweredMm, book);
  const choice = chooseLock(resolved, grid.columns.length);
  const lift: CordLockLift = {
    kind: "cord-lock",
    controlSide: frame.side,
    rearCords: resolved.rearCords,
    ...wovenSleeves(input, book),
    lockId: lock.id,
    lockName: lock.name,
    ...(choice.refused.length === 0
      ? {}
      : {
          refusedLocks: choice.refused.map(({ lock: other, reason }) => ({
            lockId: other.id,
            lockName: other.name,
            reason,
          })),
        }),
    cordId: resolved.cord.id,
    cordName: resolved.cord.name,
    cordDiameterMm: resolved.cord.diameterMm,
    housingLengthMm: lock.housingLengthMm,
    housingWidthMm: lock.housingWidthMm,
    housingHeightMm: lock.housingHeightMm,
    slots: slotsOf(input, seat.threading),
    dividerWires: lock.dividerWires,
    seat: seatOf(input, frame, seat),
    eyes: grid.columns.map(({ xMm }) => ({ xMm, zMm: layout.eyeLineMm })),
    cords: runs.cords,
    threading: runs.threading,
    cordTotalMm: runs.totalMm,
    pullN: runs.pullN,
    heldN,
    course: planLockCourse(input, { cords: runs.cords, heldN, pullN: runs.pullN }, book),
    tailLoweredMm: tail.loweredMm,
    tailRaisedMm: tail.raisedMm,
    ...(tail.endLoweredMm === undefined ? {} : { tailEndAboveFloorLoweredMm: tail.endLoweredMm }),
    ...(tail.endRaisedMm === undefined ? {} : { tailEndAboveFloorRaisedMm: tail.endRaisedMm }),
  };
  const faults = verifyRig(lift, {
    columnsMm: grid.columns.map(({ xMm }) => xMm),
    eyeDiameterMm: resolved.eye.outsideDiameterMm,
    perSlot: layout.perSlot,
  });
  const takes = (cord: Cord) =>
    misfits(lock, cord, grid.columns.length).every(({ severity }) => severity !== "stop");
  const findings = [
    ...judgeFit(input, choice),
    ...judgeSeat(input, frame, line, seat),
    ...judgeRig(input, layout, seat, lift, faults),
    ...judgePull(input, lift, loads, book),
    ...judgeStrength(resolved, lift, takes, book),
    ...judgeLevel(resolved, lift.course, takes),
    ...judgeTail(input, lift, tail),
    ...judgeRear(input, lift),
  ];
  return { lift, findings };
}

/** Eyes and board ends as distances from the control side. */
function boardLine({ resolved, size, grid, lock }: LiftInput, frame: ControlFrame): BoardLine {
  const boardFromMm = (size.finishedWidthMm - size.boardLengthMm) / 2;
  return {
    eyesMm: eyesFromControl(grid.columns, frame),
    boardFromMm,
    boardToMm: boardFromMm + size.boardLengthMm,
    eyeRadiusMm: resolved.eye.outsideDiameterMm / 2,
    straightRunMm: resolved.making.lift.straightRunMm,
    housingLengthMm: lock.housingLengthMm,
  };
}

function eyesFromControl(columns: readonly { xMm: number }[], frame: ControlFrame): number[] {
  const eyes = columns.map(({ xMm }) => mirrored(frame, xMm));
  return frame.side === "right" ? eyes.reverse() : eyes;
}

function rigLayoutOf(
  { resolved, lock }: LiftInput,
  frame: ControlFrame,
  line: BoardLine,
  loads: CordLoads,
  book: WorkingBook,
): RigLayout {
  const room = lockRoom(lock, resolved.cord);
  const layout = slotLayout(lock, room, line.eyesMm.length, resolved.board.depthMm / 2, book);
  return {
    eyesMm: line.eyesMm,
    loadsN: frame.side === "right" ? [...loads.designN].reverse() : loads.designN,
    cordDiameterMm: resolved.cord.diameterMm,
    eyeDiameterMm: resolved.eye.outsideDiameterMm,
    friction: frictionOf(resolved.eye).value,
    housingLengthMm: lock.housingLengthMm,
    eyeLineMm: resolved.board.depthMm / 2,
    slotsMm: layout.slotsMm,
    slotPitchMm: layout.pitchMm,
    perSlot: layout.perSlot,
  };
}
