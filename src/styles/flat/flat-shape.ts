import { headLine, type ShadePoint } from "../../shade/index.ts";
import { hungShape } from "../folding/hung-shape.ts";
import { raisedShape } from "../folding/raised-shape.ts";
import type { ShapeInput, VisiblePiece, VisibleShape } from "../visible-shape.ts";

/** Straight across: the hem section behind, fold over fold before it, the flat cloth last. */
export function flatShape({ size, grid, form, foldDepthMm, hang }: ShapeInput, raise: number): VisibleShape {
  const section = hungShape(raisedShape(grid, form.stretches, raise, foldDepthMm), grid, hang);
  const width = size.finishedWidthMm;
  const bottomRowY = section.rows[0]?.yMm ?? 0;
  const across = (y: number): ShadePoint[] => [
    [0, y],
    [width, y],
  ];
  const piece = (
    top: number,
    bottom: number,
    edges: VisiblePiece["edges"],
    clothTopMm: number,
  ): VisiblePiece => ({
    outline: [...across(top), ...across(Math.max(top, bottom)).reverse()],
    edges,
    clothShiftMm: clothTopMm - top,
  });
  const loweredMm = new Map(grid.rows.map(({ number, yMm }) => [number, yMm]));
  const front = section.folds.filter(({ state }) => state !== "flat").at(-1);
  return {
    pieces: [
      piece(
        bottomRowY,
        section.hemYMm,
        [{ kind: "edge", points: across(section.hemYMm) }],
        grid.rows[0]?.yMm ?? bottomRowY,
      ),
      ...section.folds.map((fold) =>
        piece(
          fold.upperYMm,
          fold.bottomYMm,
          [{ kind: fold === front ? "edge" : "fold", points: across(fold.bottomYMm), row: fold.row }],
          (loweredMm.get(fold.row) ?? fold.lowerYMm) - fold.arcMm,
        ),
      ),
      headPiece(size, section.folds.at(-1)?.upperYMm ?? bottomRowY),
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

/** The flat cloth under the board, whose upper edge follows the head. */
function headPiece(size: ShapeInput["size"], bottomMm: number): VisiblePiece {
  const head = headLine(size);
  const lowest = Math.max(bottomMm, ...head.map(([, y]) => y));
  return { outline: [...head, [size.finishedWidthMm, lowest], [0, lowest]], edges: [], clothShiftMm: 0 };
}
