import type { CordRun } from "../../shade-plan/index.ts";
import type { Point } from "../model.ts";
import type { LockSheetInput } from "./lift-input.ts";
import type { SheetInput } from "./sheet-input.ts";

/** How one cord is drawn on the back: up from its bottom ring, then along its lane to the lock. */
export interface DrawnCord {
  number: number;
  points: Point[];
  laneYMm: number;
}

/** Lanes lie apart by this share of the shade's width: enough to follow each with the eye. */
const LANE_SHARE = 0.0085;
const LEAST_LANE_MM = 3;

export function laneStepMm({ shade }: SheetInput): number {
  return Math.max(LEAST_LANE_MM, shade.size.finishedWidthMm * LANE_SHARE);
}

/**
 * Paths of all cords up to the lock, `x` already as drawn (`across` mirrors for the back view). Lanes are spread
 * so that no two lines cross: on each side of the lock the furthest cord has the highest lane and turns down
 * nearest the middle.
 */
export function drawCords(
  input: LockSheetInput,
  across: (xMm: number) => number,
  bottomRowYMm: number,
): DrawnCord[] {
  const { lift, board } = input.shade;
  const step = laneStepMm(input);
  const lockX = across(lift.seat.xMm);
  const laneTop = board.thicknessMm + 5;
  const away = (cord: CordRun) => Math.abs(across(cord.columnX) - lockX);
  const isLeft = (cord: CordRun) => across(cord.columnX) < lockX;
  const furthestFirst = (side: CordRun[]) => side.sort((a, b) => away(b) - away(a));
  const left = furthestFirst(lift.cords.filter(isLeft));
  const right = furthestFirst(lift.cords.filter((cord) => !isLeft(cord)));
  const turns = [...[...left].reverse(), ...right];
  const turnStep = lift.housingLengthMm / (turns.length + 1);
  const turnX = (cord: CordRun) => lockX + (turns.indexOf(cord) - (turns.length - 1) / 2) * turnStep;
  return [left, right].flatMap((side) =>
    side.map((cord, lane): DrawnCord => {
      const x = across(cord.columnX);
      const laneYMm = laneTop + lane * step;
      return {
        number: cord.number,
        laneYMm,
        points: [
          [x, bottomRowYMm],
          [x, laneYMm],
          [turnX(cord), laneYMm],
        ],
      };
    }),
  );
}
