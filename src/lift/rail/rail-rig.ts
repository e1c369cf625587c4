import { type CordLock, frictionOf } from "../../job/index.ts";
import type { BoardPoint, Lift } from "../../shade-plan/index.ts";
import { acrossFromControl, alongFromControl, type ControlFrame, placesOnBoard } from "../control-frame.ts";
import type { LiftInput } from "../lift-input.ts";
import { lineOfBoard } from "../line-of-board.ts";
import { type FoundSeat, findSeat } from "../lock/find-seat.ts";
import { lockRoom, misfits } from "../lock/lock-fit.ts";
import { lockScrews } from "../lock/lock-parts.ts";
import { type RigLayout, strandPath, type Turns, turnsOf } from "../lock/rig-threading.ts";
import { slotLayout } from "../lock/slot-layout.ts";

/** Kept between the rail's parts and those of the lift, mm. */
export const RAIL_CLEAR_MM = 1;

/** What hangs under the board for the lift, as far towards the wall as it reaches, mm from the wall. */
interface LiftReach {
  /** Eyes, or tube with its spools and drive. */
  partsMm: number;
  /** Its cords on their way along the board. */
  cordsMm: number;
  /** The housing of its lock. */
  lockMm: number;
}

/** One cord of the rail on its way along the board. */
export interface RailStrand {
  column: number;
  xMm: number;
  turns: Turns;
  path: BoardPoint[];
}

/** Eyes and lock of the rail under the board: a rig of its own, worked from the far end. */
export interface RailRig {
  lock: CordLock;
  /** What speaks against the lock for these cords. */
  misfits: string[];
  seat: { xMm: number; zMm: number; forced: boolean; screwsMm: BoardPoint[] };
  eyes: BoardPoint[];
  /** By column. */
  strands: RailStrand[];
  friction: number;
  /** The eyes have no room between the wall edge and what hangs under the board; a cord touches the lift's lock. */
  eyesMeetLift: boolean;
  cordsMeetLock: boolean;
}

interface RailColumn {
  number: number;
  xMm: number;
}

/**
 * The rail's eyes stand midway between the wall edge and the lift's own parts. Its lock sits between wall edge and
 * lift cords where the board is deep enough, just inside its last eye; else outside the last eye of all, where no
 * lift cord comes.
 *
 * @throws where there is no lock at all to choose from
 */
export function railRig(
  input: Pick<LiftInput, "shade" | "size" | "liftParts">,
  lift: Lift,
  columns: readonly RailColumn[],
  side: "left" | "right",
): RailRig {
  const { shade, size } = input;
  const { cord, eye, board } = shade;
  const frame: ControlFrame = { side, head: size };
  const reach = reachOf(lift, board.depthMm, cord.diameterMm);
  const lock = railLock(input, columns.length);
  const radiusMm = eye.outsideDiameterMm / 2;
  const eyeLineMm = Math.max(radiusMm, reach.partsMm / 2);
  const behind = lock.housingWidthMm + 2 * RAIL_CLEAR_MM <= Math.min(reach.partsMm, reach.cordsMm);
  const lockLineMm = behind ? lock.housingWidthMm / 2 + RAIL_CLEAR_MM : board.depthMm / 2;
  const eyesMm = columns.map(({ xMm }) => alongFromControl(frame, xMm)).sort((a, b) => a - b);
  const slots = slotLayout(lock, lockRoom(lock, cord), columns.length, lockLineMm).values;
  const layout: RigLayout = {
    eyesMm,
    // Only places and turns are asked of it.
    loadsN: [],
    cordDiameterMm: cord.diameterMm,
    eyeDiameterMm: eye.outsideDiameterMm,
    friction: frictionOf(eye).value,
    housingLengthMm: lock.housingLengthMm,
    eyeLineMm,
    slotsMm: slots.slotsMm,
    slotPitchMm: slots.pitchMm,
    perSlot: slots.perSlot,
    onBoard: placesOnBoard(frame),
  };
  const seat = findSeat(lineOfBoard(input, frame, eyesMm, lock), layout, {
    kind: behind ? "auto" : "outside",
    ruler: shade.units.ruler,
    // Just inside its last eye: its pull is judged where it comes to.
    pullLimitsN: [],
  });
  const strands = strandsOf(layout, seat, columns, frame);
  const widest = Math.max(
    ...strands.flatMap(({ path }) => path.slice(0, -2).map(({ zMm }) => zMm)),
    eyeLineMm,
  );
  return {
    lock,
    misfits: misfits(lock, cord, columns.length)
      .filter(({ severity }) => severity === "stop")
      .map(({ reason }) => reason),
    seat: {
      xMm: acrossFromControl(frame, seat.lockMm),
      zMm: lockLineMm,
      // Under a tube there is no end that is free of it.
      forced: seat.forced || (!behind && lift.takeUp === "tube"),
      screwsMm: lockScrews(lock, frame, seat.lockMm, lockLineMm),
    },
    eyes: columns.map(({ xMm }) => ({ xMm, zMm: eyeLineMm })),
    strands,
    friction: layout.friction,
    eyesMeetLift: eyeLineMm + radiusMm > reach.partsMm,
    cordsMeetLock: widest + cord.diameterMm / 2 + RAIL_CLEAR_MM > reach.lockMm,
  };
}

/** The lift's own lock where these cords fit it as well, else the first that takes them. */
function railLock({ shade, liftParts }: Pick<LiftInput, "shade" | "liftParts">, cords: number): CordLock {
  const own = liftParts.takeUp === "lock" ? [liftParts.lock] : [];
  const locks = [...own, ...shade.locks];
  const fits = (lock: CordLock) =>
    misfits(lock, shade.cord, cords).every(({ severity }) => severity !== "stop");
  const found = locks.find(fits) ?? locks[0];
  if (found === undefined) throw new Error("invalid parts: no lock");
  return found;
}

function reachOf(lift: Lift, depthMm: number, cordMm: number): LiftReach {
  if (lift.takeUp === "tube") {
    const wide = Math.max(lift.tube.diameterMm, ...lift.spools.map(({ flangeMm }) => flangeMm));
    const partsMm = Math.min(lift.tube.zMm - wide / 2, lift.drive.zMm - lift.drive.depthMm / 2);
    return { partsMm, cordsMm: partsMm, lockMm: depthMm };
  }
  if (lift.takeUp === "cleat") {
    const partsMm = Math.min(...lift.eyes.map(({ zMm }) => zMm - lift.eyeDiameterMm / 2));
    return {
      partsMm: Math.min(partsMm, lift.turn.zMm - lift.turn.diameterMm / 2),
      cordsMm: partsMm,
      lockMm: depthMm,
    };
  }
  const lanes = lift.cords.flatMap(({ path }) => path.slice(0, -2).map(({ zMm }) => zMm - cordMm / 2));
  return {
    partsMm: Math.min(...lift.eyes.map(({ zMm }) => zMm - lift.eyeDiameterMm / 2)),
    cordsMm: Math.min(...lanes),
    lockMm: lift.seat.zMm - lift.housingWidthMm / 2,
  };
}

function strandsOf(
  layout: RigLayout,
  seat: FoundSeat,
  columns: readonly RailColumn[],
  frame: ControlFrame,
): RailStrand[] {
  const fromSide = frame.side === "right" ? [...columns].reverse() : columns;
  return seat.threading
    .flatMap((strand): RailStrand[] => {
      const column = fromSide[strand.eye];
      if (column === undefined) return [];
      const path = strandPath(layout, strand, seat.lockMm).map(([along, zMm], i) => ({
        xMm: i === 0 ? column.xMm : acrossFromControl(frame, along),
        zMm,
      }));
      return [{ column: column.number, xMm: column.xMm, turns: turnsOf(layout, strand, seat.lockMm), path }];
    })
    .sort((a, b) => a.column - b.column);
}
