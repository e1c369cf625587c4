import { cordStyle, type Stroke } from "../../drawing/index.ts";
import { pt } from "./paper.ts";
import type { Pen } from "./pen.ts";

/** Room that a swatch takes before the text of its cell, pt. */
export const SWATCH_WIDTH = 48;
const LENGTH = 40;
/** Larger than in the drawings: it is what they are compared with, on a grey print too. */
const TIMES = 1.5;

/** A short length of a cord as every drawing shows it: colour, rhythm, casing. */
export function drawCordSwatch(pen: Pen, number: number, x: number, middleY: number): void {
  const { casing, core } = cordStyle(number);
  for (const stroke of [casing, core]) drawStroke(pen, stroke, x, middleY);
}

function drawStroke(pen: Pen, stroke: Stroke, x: number, y: number): void {
  pen.line(x, y, x + LENGTH, y, {
    paint: stroke.paint,
    widthPt: TIMES * pt(stroke.widthMm),
    dashPt: stroke.dashMm?.map((mm) => TIMES * pt(mm)),
  });
}
