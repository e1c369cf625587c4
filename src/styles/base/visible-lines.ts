import type { Column, ShadePoint } from "../../shade-plan/index.ts";
import type { VisibleLine, VisiblePiece } from "../visible-shape.ts";

/** A level line from edge to edge. */
export function across(widthMm: number, yMm: number): ShadePoint[] {
  return [
    [0, yMm],
    [widthMm, yMm],
  ];
}

/** Up one side from this height, along the level top line and down the other. */
export function sidesAndTop(widthMm: number, fromYMm: number): VisibleLine {
  return {
    kind: "edge",
    points: [
      [0, fromYMm],
      [0, 0],
      [widthMm, 0],
      [widthMm, fromYMm],
    ],
  };
}

/** The flat cloth from the top line down to this height. */
export function headCloth(widthMm: number, toYMm: number): VisiblePiece {
  return {
    outline: [
      [0, 0],
      [widthMm, 0],
      [widthMm, toYMm],
      [0, toYMm],
    ],
    edges: [],
  };
}

/** Tapes up every column, seen from behind. */
export function tapes(columns: readonly Column[], toYMm: number): VisibleLine[] {
  return columns.map(({ xMm }) => ({
    kind: "tape",
    seenFrom: "back",
    points: [
      [xMm, 0],
      [xMm, toYMm],
    ],
  }));
}
