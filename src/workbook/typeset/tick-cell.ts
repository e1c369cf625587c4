import type { Book } from "./book.ts";
import type { CellLike } from "./table-spec.ts";
import { drawTickBox, TICK_BOX_PT } from "./tick-box.ts";

/** A cell with a box to tick before its words. */
export function tickCell(book: Book, text: string, strong = false): CellLike {
  return {
    text,
    strong,
    sign: { widthPt: TICK_BOX_PT + 7, draw: (x, y) => drawTickBox(book.pen, x, y) },
  };
}
