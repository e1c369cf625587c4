import { type Grid, headLine, type ShadePoint } from "../../shade-plan/index.ts";
import { across } from "../base/visible-lines.ts";
import type { ShapeInput, VisiblePiece, VisibleShape } from "../visible-shape.ts";
import { hungShape } from "./hung-shape.ts";
import { type RaisedShape, standingShape } from "./raised-shape.ts";

/** Straight across: the hem section behind, fold over fold before it, the flat cloth last. */
export function flatShape({ size, grid, form, foldDepthMm, hang }: ShapeInput, raise: number): VisibleShape {
  const section = hungShape(standingShape(grid, form.stretches, raise, foldDepthMm), grid, hang);
  const width = size.finishedWidthMm;
  const loweredMm = new Map(grid.rows.map(({ number, yMm }) => [number, yMm]));
  const front = section.folds.filter(({ state }) => state !== "flat").at(-1);
  return {
    pieces: [
      hemPiece(section, grid, width),
      ...section.folds.map((fold): VisiblePiece => {
        const { row, upperYMm, bottomYMm } = fold;
        return {
          outline: strip(width, upperYMm, bottomYMm),
          edges: [{ kind: fold === front ? "edge" : "fold", points: across(width, bottomYMm), row }],
          clothShiftMm: (loweredMm.get(row) ?? fold.lowerYMm) - fold.arcMm - upperYMm,
        };
      }),
      headPiece(size, section.folds.at(-1)?.upperYMm ?? section.rows[0]?.yMm ?? 0),
    ],
    lines: [
      {
        kind: "edge",
        points: [[0, section.bottomYMm], ...headLine(size), [width, section.bottomYMm]],
      },
    ],
    section,
  };
}

/** What hangs below the lowest row. */
export function hemPiece({ rows, hemYMm }: RaisedShape, grid: Grid, widthMm: number): VisiblePiece {
  const rowYMm = rows[0]?.yMm ?? 0;
  return {
    outline: strip(widthMm, rowYMm, hemYMm),
    edges: [{ kind: "edge", points: across(widthMm, hemYMm) }],
    clothShiftMm: (grid.rows[0]?.yMm ?? rowYMm) - rowYMm,
  };
}

function strip(widthMm: number, topMm: number, bottomMm: number): ShadePoint[] {
  return [...across(widthMm, topMm), ...across(widthMm, Math.max(topMm, bottomMm)).reverse()];
}

/** The flat cloth under the board, whose upper edge follows the head. */
function headPiece(size: ShapeInput["size"], bottomMm: number): VisiblePiece {
  const head = headLine(size);
  const lowest = Math.max(bottomMm, ...head.map(([, y]) => y));
  return { outline: [...head, [size.finishedWidthMm, lowest], [0, lowest]], edges: [], clothShiftMm: 0 };
}
