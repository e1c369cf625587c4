import type { WorkingBook } from "../figures/index.ts";
import { type CordRun, headYMm } from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";
import { upToMark } from "../units/index.ts";
import { type ControlFrame, mirrored } from "./control-frame.ts";
import { cordLength } from "./cord-lengths.ts";
import { cordTotal, sumFigure } from "./cord-sum.ts";
import type { FoundSeat } from "./find-seat.ts";
import type { LiftInput } from "./lift-input.ts";
import { lockRoom } from "./lock-fit.ts";
import { numbersFromControl, xFromControl } from "./lock-parts.ts";
import {
  cordPull,
  frictionOf,
  type RigLayout,
  ROLLER_EFFICIENCY,
  type Strand,
  strandPath,
  wrapRad,
} from "./rig-threading.ts";
import { firstSlotInUse } from "./slot-layout.ts";

export interface CordRuns {
  /** By number. */
  cords: CordRun[];
  /** Order in which the cords go into the lock: from the wall outwards, far ones of each side kept in their order. */
  threading: number[];
  totalMm: number;
  pullN: number;
}

/** Path, slot, length and pull of each cord. */
export function cordRuns(
  input: LiftInput,
  frame: ControlFrame,
  layout: RigLayout,
  seat: FoundSeat,
  tailMm: number,
  book: WorkingBook,
): CordRuns {
  const { resolved, grid, size } = input;
  const numbers = numbersFromControl(grid.columns, frame.side);
  const columns = xFromControl(grid.columns, frame.side);
  const { strands } = seat.threading;
  const lockX = mirrored(frame, seat.lockMm);
  const toTopMm = size.finishedLengthMm - (grid.rows[0]?.fromHemMm ?? 0);
  const firstSlot = firstSlotInUse(lockRoom(input.lock, resolved.cord));
  const cords = strands
    .map((strand): CordRun => {
      const number = numbers[strand.eye] ?? 0;
      const columnX = columns[strand.eye] ?? 0;
      const riseMm = Math.max(0, toTopMm - headYMm(size, columnX));
      const path = strandPath(layout, strand, seat.lockMm);
      const lengthMm = lengthFigure(
        book,
        number,
        columnX,
        lockX,
        riseMm,
        tailMm,
        resolved.making.lift.knotsMm,
      );
      return {
        number,
        columnX,
        entersFrom: entrance(strand, frame),
        slot: firstSlot + strand.slot,
        placeInSlot: strand.place,
        riseMm,
        runMm: Math.abs(lockX - columnX),
        tailMm,
        knotsMm: resolved.making.lift.knotsMm,
        lengthMm,
        cutMm: upToMark(lengthMm, resolved.units.ruler),
        path: path.map(([along, zMm], i) => ({ xMm: i === 0 ? columnX : mirrored(frame, along), zMm })),
        eyes: [strand.eye, ...strand.passes].map((eye) => numbers[eye] ?? 0),
        loadN: layout.loadsN[strand.eye] ?? 0,
        pullN: pullFigure(input, book, number, layout.loadsN[strand.eye] ?? 0, wrapRad(path)),
      };
    })
    .sort((a, b) => a.number - b.number);
  return {
    cords,
    threading: strands.map(({ eye }) => numbers[eye] ?? 0),
    totalMm: cordTotal(book, cords),
    pullN: sumFigure(book, "lift.pull", {
      label: "Pull at the hand, shade nearly raised",
      symbol: "F",
      unit: "N",
      each: cords.map(({ number, pullN }) => [number, pullN]),
      name: "pull of cord",
      cite: cite("arithmetic", "each cord on the worse of its two shares, so a little above the true pull"),
    }),
  };
}

function entrance(strand: Strand, { side }: ControlFrame): "left" | "right" {
  const inner = side === "right" ? "left" : "right";
  return strand.fromInner ? inner : side;
}

function lengthFigure(
  book: WorkingBook,
  number: number,
  columnX: number,
  lockX: number,
  riseMm: number,
  tailMm: number,
  knotsMm: number,
): number {
  return book.figure(`rig.cord-${number}-length`, {
    label: `Cord ${number}: length`,
    symbol: `c${number}`,
    unit: "mm",
    formula: "y + abs(X − x) + t + k",
    given: {
      y: [riseMm, "mm", "bottom row to the board above it"],
      X: [lockX, "mm", "lock, from the left edge"],
      x: [columnX, "mm", "column, from the left edge"],
      t: [tailMm, "mm", "tail, shade lowered"],
      k: [knotsMm, "mm", "knots and threading"],
    },
    cite: cite("geometry", "rise, run, tail and knots"),
    note: "the rise is taken to the top line: the board’s thickness stays as spare",
    compute: ({ y, X, x, t, k }) => cordLength(y, x, X, t, k),
  });
}

function pullFigure(
  { resolved }: LiftInput,
  book: WorkingBook,
  number: number,
  loadN: number,
  wrap: number,
): number {
  const friction = frictionOf(resolved.eye);
  return book.figure(`lift.cord-${number}-pull`, {
    label: `Cord ${number}: pull at the hand`,
    symbol: `p${number}`,
    unit: "N",
    formula: "T·exp(μ·θ) / η",
    given: {
      T: [loadN, "N", "its load, fully raised"],
      μ: [friction.value, "ratio", "friction of cord on eye"],
      θ: [wrap, "ratio", "turn at its own eye, at eyes passed and at the housing, radians"],
      η: [ROLLER_EFFICIENCY.value, "ratio", "efficiency of the lock’s roller"],
    },
    cite: cite("capstan"),
    compute: ({ T, μ, θ, η }) => cordPull(T, μ, θ, η),
  });
}
