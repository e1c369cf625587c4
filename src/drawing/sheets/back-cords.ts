import { type CleatCord, type CordRun, headYMm } from "../../shade-plan/index.ts";
import type { Point } from "../model.ts";
import { boardLine } from "./board-line.ts";
import { type CleatSheetInput, cordExit, type LockSheetInput } from "./lift-input.ts";
import type { SheetInput } from "./sheet-input.ts";

/** How one cord is drawn on the back: up from its bottom ring, then along its lane to lock or last eye. */
export interface DrawnCord {
  number: number;
  points: Point[];
  /** Below the upper edge of the board, which follows the head. */
  laneMm: number;
}

/** Lanes lie apart by this share of the shade's width: enough to follow each with the eye. */
const LANE_SHARE = 0.0085;
const LEAST_LANE_MM = 3;
/** Of a last eye, its wire taken off. */
const CLEAR_OF_WIRE = 0.6;

export function laneStepMm({ shade }: SheetInput): number {
  return Math.max(LEAST_LANE_MM, shade.size.finishedWidthMm * LANE_SHARE);
}

/**
 * Paths of all cords up to lock or last eye, `x` already as drawn (`across` mirrors for the back view). Lanes are spread
 * so that no two lines cross: on each side of the lock the furthest cord has the highest lane and turns down
 * nearest the middle.
 */
export function drawCords(
  input: LockSheetInput | CleatSheetInput,
  across: (xMm: number) => number,
  bottomRingYMm: (xMm: number) => number,
): DrawnCord[] {
  const { lift, board, size } = input.shade;
  const step = laneStepMm(input);
  const exitMm = cordExit(input).xMm;
  const lockX = across(exitMm);
  const bends = boardLine(input.shade).slice(1, -1);
  const wideMm = lift.takeUp === "lock" ? lift.housingLengthMm : lift.turn.diameterMm * CLEAR_OF_WIRE;
  const laneTop = board.thicknessMm + 5;
  const away = (cord: CordRun | CleatCord) => Math.abs(across(cord.columnX) - lockX);
  const isLeft = (cord: CordRun | CleatCord) => across(cord.columnX) < lockX;
  const all: readonly (CordRun | CleatCord)[] = lift.cords;
  const furthestFirst = (side: (CordRun | CleatCord)[]) => side.sort((a, b) => away(b) - away(a));
  const left = furthestFirst(all.filter(isLeft));
  const right = furthestFirst(all.filter((cord) => !isLeft(cord)));
  const turns = [...[...left].reverse(), ...right];
  const turnStep = wideMm / (turns.length + 1);
  const turnX = (cord: CordRun | CleatCord) =>
    lockX + (turns.indexOf(cord) - (turns.length - 1) / 2) * turnStep;
  return [left, right].flatMap((side) =>
    side.map((cord, lane): DrawnCord => {
      const { columnX } = cord;
      const x = across(columnX);
      const laneMm = laneTop + lane * step;
      const [from, to] = [Math.min(columnX, exitMm), Math.max(columnX, exitMm)];
      const along = bends.filter(([xMm]) => xMm > from && xMm < to);
      if (columnX > exitMm) along.reverse();
      return {
        number: cord.number,
        laneMm,
        points: [
          [x, bottomRingYMm(columnX)],
          [x, headYMm(size, columnX) + laneMm],
          ...along.map(([xMm, yMm]): Point => [across(xMm), yMm + laneMm]),
          [turnX(cord), headYMm(size, exitMm) + laneMm],
        ],
      };
    }),
  );
}
