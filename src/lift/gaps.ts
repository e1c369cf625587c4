import { SAME_LENGTH_MM } from "../units/index.ts";

/** What bounds the seat of a lock, as distances from the control side, mm. */
export interface BoardLine {
  /** Eyes from the control side inwards. */
  eyesMm: readonly number[];
  boardFromMm: number;
  boardToMm: number;
  eyeRadiusMm: number;
  straightRunMm: number;
  housingLengthMm: number;
}

/** Kept between the housing and the end of the board, so that its screws do not split the wood. */
export const BOARD_END_MM = 3;

/** A stretch of board between two neighbouring eyes, or outside the last: where a lock's centre may lie. */
export interface Gap {
  /** Eyes between it and the control side: 0 is outside the last eye. */
  outer: number;
  kind: "between" | "outside";
  fromMm: number;
  toMm: number;
}

/** Feasible places of the lock's centre after so many eyes; `fromMm > toMm` says that there are none. */
export function gapAfter(line: BoardLine, outer: number): Gap {
  const half = line.housingLengthMm / 2;
  const beside = line.eyeRadiusMm + line.straightRunMm + half;
  const before = line.eyesMm[outer - 1];
  const after = line.eyesMm[outer];
  return {
    outer,
    kind: before === undefined || after === undefined ? "outside" : "between",
    fromMm: before === undefined ? line.boardFromMm + BOARD_END_MM + half : before + beside,
    toMm: after === undefined ? line.boardToMm - BOARD_END_MM - half : after - beside,
  };
}

export function hasRoom(gap: Gap): boolean {
  return gap.toMm >= gap.fromMm - SAME_LENGTH_MM;
}

/** How much too short the gap is for the lock, mm; 0 where it has room. */
export function shortOfMm(gap: Gap): number {
  return Math.max(0, gap.fromMm - gap.toMm);
}

/** The gaps that a lock is looked for in: outside the last eye on the control side, and between the last two. */
export function gapsToTry(line: BoardLine, wish: "auto" | "between" | "outside"): Gap[] {
  const outside = gapAfter(line, 0);
  if (line.eyesMm.length < 2) return [outside];
  const between = gapAfter(line, 1);
  if (wish === "outside") return [outside];
  return wish === "between" ? [between] : [between, outside];
}

/** The gap in which a place lies. */
export function gapAround(line: BoardLine, placeMm: number): Gap {
  return gapAfter(line, line.eyesMm.filter((eye) => eye < placeMm).length);
}
