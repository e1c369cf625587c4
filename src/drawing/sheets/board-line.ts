import type { ShadePlan } from "../../plan/index.ts";
import { headLine, headYMm } from "../../shade-plan/index.ts";
import type { Point } from "../model.ts";

/** Upper edge of the board from its left end to its right, seen from the room: level, or along the head. */
export function boardLine({ board, size }: Pick<ShadePlan, "board" | "size">): Point[] {
  const right = board.leftMm + board.lengthMm;
  const end = (x: number): Point => [x, headYMm(size, x)];
  const between = headLine(size).filter(([x]) => x > board.leftMm && x < right);
  return [end(board.leftMm), ...between, end(right)];
}
