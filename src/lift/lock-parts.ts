import type { WorkingBook } from "../figures/index.ts";
import type { BoardPoint, LockSeat, Slot } from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";
import { type ControlFrame, mirrored, mirroredStretch } from "./control-frame.ts";
import type { FoundSeat } from "./find-seat.ts";
import { BOARD_END_MM, type BoardLine, type Gap, hasRoom } from "./gaps.ts";
import type { LiftInput } from "./lift-input.ts";
import { lockRoom } from "./lock-fit.ts";
import type { RigThreading } from "./rig-threading.ts";
import { firstSlotInUse, slotMiddleMm } from "./slot-layout.ts";

const mouthCite = cite("lock-instructions", "cords enter straight, clear of the last eye");

/** Both ends of the stretch in which the lock's centre may lie, from the control side. */
export function seatFigures(line: BoardLine, gap: Gap, book: WorkingBook): void {
  const half = [line.housingLengthMm, "mm", "length of the housing"] as const;
  const radius = [line.eyeRadiusMm, "mm", "half of an eye"] as const;
  const run = [line.straightRunMm, "mm", "straight run into the lock"] as const;
  const before = line.eyesMm[gap.outer - 1];
  const after = line.eyesMm[gap.outer];
  const common = {
    unit: "mm",
    cite: mouthCite,
    note: "measured from the finished edge on the control side",
  } as const;
  if (before === undefined) {
    book.figure("rig.seat-from", {
      ...common,
      label: "Lock’s centre, nearest place",
      symbol: "a",
      formula: "b + m + H / 2",
      given: {
        b: [line.boardFromMm, "mm", "end of the board"],
        m: [BOARD_END_MM, "mm", "kept to the board’s end"],
        H: half,
      },
      compute: ({ b, m, H }) => b + m + H / 2,
    });
  } else {
    book.figure("rig.seat-from", {
      ...common,
      label: "Lock’s centre, nearest place",
      symbol: "a",
      formula: "c + r + s + H / 2",
      given: { c: [before, "mm", "eye before the lock"], r: radius, s: run, H: half },
      compute: ({ c, r, s, H }) => c + r + s + H / 2,
    });
  }
  if (after === undefined) return;
  book.figure("rig.seat-to", {
    ...common,
    label: "Lock’s centre, farthest place",
    symbol: "z",
    formula: "c − r − s − H / 2",
    given: { c: [after, "mm", "eye behind the lock"], r: radius, s: run, H: half },
    compute: ({ c, r, s, H }) => c - r - s - H / 2,
  });
}

export function seatOf(input: LiftInput, frame: ControlFrame, found: FoundSeat): LockSeat {
  const xMm = mirrored(frame, found.lockMm);
  const zMm = input.resolved.board.depthMm / 2;
  const stretches = found.tried
    .filter(hasRoom)
    .map((gap) => mirroredStretch(frame, [gap.fromMm, Math.max(gap.fromMm, gap.toMm)]));
  return {
    xMm,
    zMm,
    feasibleMm: stretches.sort((a, b) => a[0] - b[0]),
    kind: found.gap.kind,
    forced: found.forced,
    facing: frame.side,
    screwsMm: screwPositions(input, xMm, zMm),
  };
}

/** Screws lie under the housing: one row up to three, two rows from four. */
function screwPositions({ lock }: LiftInput, xMm: number, zMm: number): BoardPoint[] {
  const rows = lock.screws > 3 ? 2 : 1;
  const inRow = Math.ceil(lock.screws / rows);
  return Array.from({ length: lock.screws }, (_, i) => {
    const across = inRow === 1 ? 0 : (i % inRow) / (inRow - 1) - 0.5;
    const row = rows === 1 ? 0 : Math.floor(i / inRow) - 0.5;
    return { xMm: xMm + across * 0.8 * lock.housingLengthMm, zMm: zMm + row * 0.6 * lock.housingWidthMm };
  });
}

export function slotsOf({ resolved, grid, lock }: LiftInput, { strands }: RigThreading): Slot[] {
  const room = lockRoom(lock, resolved.cord);
  const first = firstSlotInUse(room);
  const numbers = numbersFromControl(grid.columns, resolved.making.lift.controlSide);
  return Array.from({ length: room.slots }, (_, i) => ({
    number: i + 1,
    zMm: slotMiddleMm(lock, i + 1, resolved.board.depthMm / 2),
    usable: i + 1 >= room.firstSlot && i + 1 <= room.lastSlot,
    cords: strands.filter(({ slot }) => first + slot === i + 1).map(({ eye }) => numbers[eye] ?? 0),
  }));
}

/** Column numbers from the control side inwards. */
export function numbersFromControl(columns: readonly { number: number }[], side: "left" | "right"): number[] {
  const numbers = columns.map(({ number }) => number);
  return side === "right" ? numbers.reverse() : numbers;
}

/** Columns from the control side inwards, still as distances from the left finished edge, mm. */
export function xFromControl(columns: readonly { xMm: number }[], side: "left" | "right"): number[] {
  const places = columns.map(({ xMm }) => xMm);
  return side === "right" ? places.reverse() : places;
}
