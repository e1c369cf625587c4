import type { Pen } from "./pen.ts";

/** Side of a box to tick with a pencil, pt: 3.5 mm. */
export const TICK_BOX_PT = 10;

export function drawTickBox(pen: Pen, x: number, middleY: number): void {
  pen.box(x, middleY - TICK_BOX_PT / 2, TICK_BOX_PT, TICK_BOX_PT, { paint: "ink", widthPt: 0.8 });
}
