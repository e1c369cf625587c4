import { isLevel, type ShadePoint } from "../../shade-plan/index.ts";
import { slantOf, type VisibleLine, type VisiblePiece, type VisibleShape } from "../../styles/index.ts";
import type { SheetInput } from "./sheet-input.ts";

/** A shape drawn for half way across, where rows or hem of the shade slant. */
export function slanted(
  shape: VisibleShape,
  shade: Pick<SheetInput["shade"], "size" | "grid">,
): VisibleShape {
  const slant = slantOf(shade, shape.section);
  if (slant === undefined) return shape;
  const moved = ([x, y]: ShadePoint): ShadePoint => [x, slant(x, y)];
  const line = (one: VisibleLine): VisibleLine => ({ ...one, points: one.points.map(moved) });
  return {
    ...shape,
    pieces: shape.pieces.map(
      (piece): VisiblePiece => ({
        ...piece,
        outline: piece.outline.map(moved),
        edges: piece.edges.map(line),
      }),
    ),
    lines: shape.lines.map(line),
  };
}

/** Where rows or hem slant, which of its sections one drawing shows: to be added to its caption. */
export function whereSlanted({ grid }: Pick<SheetInput["shade"], "grid">): string {
  return isLevel(grid) ? "" : " Rows or hem slant: this is how it is half way across.";
}
