import type { VisibleShape } from "../../styles/index.ts";
import { STYLE_SHAPES } from "../../styles/shapes/index.ts";
import type { SheetInput } from "./sheet-input.ts";
import { slanted } from "./slanted.ts";

/** The shade at its present height: one shape for front, back and side, so that they agree. */
export function shapeNow({ shade, raise }: SheetInput): VisibleShape {
  const { size, grid, form, folds, board } = shade;
  const foldDepthMm = board.stackDepthMm / (grid.rows.length + 1);
  const hang = folds === undefined ? {} : { hang: folds.cloth };
  return slanted(STYLE_SHAPES[shade.style]({ size, grid, form, foldDepthMm, ...hang }, raise), shade);
}
