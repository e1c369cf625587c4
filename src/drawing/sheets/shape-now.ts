import { type RaisedShape, raisedShape } from "../raised-shape.ts";
import type { SheetInput } from "./sheet-input.ts";

/** The shade at its present height: one shape for front, back and side, so that they agree. */
export function shapeNow({ shade, raise }: SheetInput): RaisedShape {
  const stack = shade.workings.find((working) => working.id === "board.stack-depth");
  const { grid } = shade;
  return stack === undefined
    ? raisedShape(grid, raise)
    : raisedShape(grid, raise, stack.value / (grid.rows.length + 1));
}
