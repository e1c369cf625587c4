import { type Figure, figureRuleOf, type Worked } from "../../figures/index.ts";
import { frictionOf } from "../../job/index.ts";
import { alongHeadMm, type CordRun } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { upToMark } from "../../units/index.ts";
import { acrossFromControl, type ControlFrame } from "../control-frame.ts";
import { cordAlongBoard, type OfCord } from "../cord-length-rule.ts";
import { cordTotal, handPullOfCords } from "../cord-sum.ts";
import type { LockInput } from "../lift-input.ts";
import { riseOf } from "../rise-of.ts";
import type { FoundSeat } from "./find-seat.ts";
import { lockRoom } from "./lock-fit.ts";
import { numbersFromControl, xFromControl } from "./lock-parts.ts";
import {
  cordPull,
  type RigLayout,
  ROLLER_EFFICIENCY,
  type Strand,
  strandPath,
  type Turns,
  turnsOf,
} from "./rig-threading.ts";
import { firstSlotInUse } from "./slot-layout.ts";

const LENGTH = cordAlongBoard([
  "mm",
  "lock, along the board from the left edge",
  "figure:rig.seat-*",
  "lift/controlSide",
]);

const PULL_OF_CORD = figureRuleOf<OfCord>()({
  id: ({ cord }) => `lift.cord-${cord}-pull`,
  label: ({ cord }) => `Cord ${cord}: pull at the hand`,
  symbol: ({ cord }) => `p${cord}`,
  unit: "N",
  formula: "T·exp(μ·θ) / η",
  inputs: {
    T: ["N", "its load, fully raised", "figure:lift.held", "figure:shape.columns"],
    μ: ["ratio", "friction of cord on eye", "lift/eye"],
    θ: [
      "ratio",
      "turn at its own eye, at eyes passed and at the housing, radians",
      "figure:rig.seat-*",
      "lift/lock",
      "lift/cord",
    ],
    η: ["ratio", "efficiency of the lock’s roller"],
  },
  cite: cite("capstan"),
  compute: ({ T, μ, θ, η }) => cordPull(T, μ, θ, η),
});

export interface CordRuns {
  /** By number. */
  cords: CordRun[];
  /** Of each cord, by its number. */
  turns: ReadonlyMap<number, Turns>;
  /** Order in which the cords go into the lock: from the wall outwards, far ones of each side kept in their order. */
  threading: number[];
  totalMm: number;
  pullN: number;
}

/** Path, slot, length and pull of each cord. */
export function cordRuns(
  { shade, grid, size, liftParts }: LockInput,
  frame: ControlFrame,
  layout: RigLayout,
  seat: FoundSeat,
  tailMm: number,
): Worked<CordRuns> {
  const { knotsMm } = shade.making.lift;
  const friction = frictionOf(shade.eye);
  const workings: Figure[] = [];
  const written = (figure: Figure): number => {
    workings.push(figure);
    return figure.value;
  };
  const numbers = numbersFromControl(grid.columns, frame.side);
  const columns = xFromControl(grid.columns, frame.side);
  const fromLeft = (xMm: number) => alongHeadMm(size, 0, xMm);
  const lockMm = fromLeft(acrossFromControl(frame, seat.lockMm));
  const turns = new Map<number, Turns>();
  const bottom = grid.rows[0];
  const firstSlot = firstSlotInUse(lockRoom(liftParts.lock, shade.cord));
  const cords = seat.threading
    .map((strand): CordRun => {
      const number = numbers[strand.eye] ?? 0;
      const columnX = columns[strand.eye] ?? 0;
      const riseMm = riseOf(bottom, size, columnX);
      const path = strandPath(layout, strand, seat.lockMm);
      const loadN = layout.loadsN[strand.eye] ?? 0;
      const columnMm = fromLeft(columnX);
      const length = { y: riseMm, X: lockMm, x: columnMm, t: tailMm, k: knotsMm };
      const lengthMm = written(LENGTH.figure(length, { cord: number }));
      const turned = turnsOf(layout, strand, seat.lockMm);
      turns.set(number, turned);
      const θ = turned.ownEyeRad + turned.afterRad;
      const pull = { T: loadN, μ: friction.value, θ, η: ROLLER_EFFICIENCY.value };
      return {
        number,
        columnX,
        entersFrom: entrance(strand, frame),
        slot: firstSlot + strand.slot,
        placeInSlot: strand.place,
        riseMm,
        runMm: Math.abs(lockMm - columnMm),
        tailMm,
        knotsMm,
        lengthMm,
        cutMm: upToMark(lengthMm, shade.units.ruler),
        path: path.map(([along, zMm], i) => ({
          xMm: i === 0 ? columnX : acrossFromControl(frame, along),
          zMm,
        })),
        eyes: [strand.eye, ...strand.passes].map((eye) => numbers[eye] ?? 0),
        loadN,
        pullN: written(PULL_OF_CORD.figure(pull, { cord: number })),
      };
    })
    .sort((a, b) => a.number - b.number);
  const totalMm = written(cordTotal(cords));
  const pullN = written(handPullOfCords(cords.map((cord) => [cord.number, cord.pullN])));
  const threading = seat.threading.map(({ eye }) => numbers[eye] ?? 0);
  return { values: { cords, turns, threading, totalMm, pullN }, workings };
}

function entrance(strand: Strand, { side }: ControlFrame): "left" | "right" {
  const inner = side === "right" ? "left" : "right";
  return strand.fromInner ? inner : side;
}
