import { type Figure, figureRule } from "../../figures/index.ts";
import type { CordLock } from "../../job/index.ts";
import type { BoardPoint, LockSeat, Slot } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { acrossFromControl, type ControlFrame, stretchAcross } from "../control-frame.ts";
import { BOARD_END_MM, type BoardLine, type Gap, hasRoom } from "../gaps.ts";
import type { LockInput } from "../lift-input.ts";
import type { FoundSeat } from "./find-seat.ts";
import { lockRoom } from "./lock-fit.ts";
import type { Strand } from "./rig-threading.ts";
import { firstSlotInUse, slotMiddleMm } from "./slot-layout.ts";

const mouthCite = cite("lock-instructions", "cords enter straight, clear of the last eye");

const CENTRE = {
  unit: "mm",
  cite: mouthCite,
  note: "measured along the board from the finished edge on the control side",
} as const;
/** What decides which lock it is: the maker, or the cords and how many of them there are. */
export const LOCK_CHOICE = ["lift/lock", "lift/cord", "columns/edgeInsetMm", "figure:shape.columns"] as const;
const HOUSING = ["mm", "length of the housing", ...LOCK_CHOICE] as const;
const EYE_RADIUS = ["mm", "half of an eye", "lift/eye"] as const;
const STRAIGHT_RUN = ["mm", "straight run into the lock", "lift/straightRunMm"] as const;
const SEAT = ["lift/seat", "lift/seatMm", "lift/controlSide"] as const;
const COLUMNS = ["columns/edgeInsetMm", "figure:shape.column*", "figure:measure.finished-width"] as const;
const NEAREST = {
  ...CENTRE,
  id: "rig.seat-from",
  label: "Lock’s centre, nearest place",
  symbol: "a",
} as const;

const SEAT_FROM_BOARD = figureRule({
  ...NEAREST,
  formula: "b + m + H / 2",
  inputs: {
    b: ["mm", "end of the board", "figure:measure.board-length"],
    m: ["mm", "kept to the board’s end"],
    H: HOUSING,
  },
  restsOn: SEAT,
  compute: ({ b, m, H }) => b + m + H / 2,
});

const SEAT_FROM_EYE = figureRule({
  ...NEAREST,
  formula: "c + r + s + H / 2",
  inputs: { c: ["mm", "eye before the lock", ...COLUMNS], r: EYE_RADIUS, s: STRAIGHT_RUN, H: HOUSING },
  restsOn: SEAT,
  compute: ({ c, r, s, H }) => c + r + s + H / 2,
});

const SEAT_TO = figureRule({
  ...CENTRE,
  id: "rig.seat-to",
  label: "Lock’s centre, farthest place",
  symbol: "z",
  formula: "c − r − s − H / 2",
  inputs: { c: ["mm", "eye behind the lock", ...COLUMNS], r: EYE_RADIUS, s: STRAIGHT_RUN, H: HOUSING },
  restsOn: SEAT,
  compute: ({ c, r, s, H }) => c - r - s - H / 2,
});

/** Both ends of the stretch in which the lock's centre may lie, from the control side. */
export function seatFigures(line: BoardLine, gap: Gap): Figure[] {
  const { housingLengthMm: H, eyeRadiusMm: r, straightRunMm: s, boardFromMm: b } = line;
  const before = line.eyesMm[gap.outer - 1];
  const after = line.eyesMm[gap.outer];
  return [
    before === undefined
      ? SEAT_FROM_BOARD.figure({ b, m: BOARD_END_MM, H })
      : SEAT_FROM_EYE.figure({ c: before, r, s, H }),
    ...(after === undefined ? [] : [SEAT_TO.figure({ c: after, r, s, H })]),
  ];
}

export function seatOf(input: LockInput, frame: ControlFrame, found: FoundSeat): LockSeat {
  const xMm = acrossFromControl(frame, found.lockMm);
  const zMm = input.shade.board.depthMm / 2;
  const stretches = found.tried
    .filter(hasRoom)
    .map((gap) => stretchAcross(frame, [gap.fromMm, Math.max(gap.fromMm, gap.toMm)]));
  return {
    xMm,
    zMm,
    feasibleMm: stretches.sort((a, b) => a[0] - b[0]),
    kind: found.gap.kind,
    forced: found.forced,
    facing: frame.side,
    chosenFor: found.chosenFor,
    screwsMm: lockScrews(input.liftParts.lock, frame, found.lockMm, zMm),
  };
}

/** Screws lie under the housing: one row up to three, two rows from four. */
export function lockScrews(lock: CordLock, frame: ControlFrame, lockMm: number, zMm: number): BoardPoint[] {
  const rows = lock.screws > 3 ? 2 : 1;
  const inRow = Math.ceil(lock.screws / rows);
  // Numbered from the left, whichever side it is worked on.
  const leftwards = frame.side === "right" ? 1 : -1;
  return Array.from({ length: lock.screws }, (_, i) => {
    const fromLeft = inRow === 1 ? 0 : (i % inRow) / (inRow - 1) - 0.5;
    const row = rows === 1 ? 0 : Math.floor(i / inRow) - 0.5;
    return {
      xMm: acrossFromControl(frame, lockMm - leftwards * fromLeft * 0.8 * lock.housingLengthMm),
      zMm: zMm + row * 0.6 * lock.housingWidthMm,
    };
  });
}

export function slotsOf({ shade, grid, liftParts: { lock } }: LockInput, strands: readonly Strand[]): Slot[] {
  const room = lockRoom(lock, shade.cord);
  const first = firstSlotInUse(room);
  const numbers = numbersFromControl(grid.columns, shade.making.lift.controlSide);
  return Array.from({ length: room.slots }, (_, i) => ({
    number: i + 1,
    zMm: slotMiddleMm(lock, i + 1, shade.board.depthMm / 2),
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
