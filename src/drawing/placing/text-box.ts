import type { Point } from "../model.ts";
import type { PlacedText } from "../placed.ts";
import { type Box, emptyBox, include, overlaps } from "./box.ts";
import { ASCENT_EM, DESCENT_EM } from "./text-width.ts";

/** Shift of a line's start from its anchor, in widths of the line. */
const BEFORE = { start: 0, middle: 0.5, end: 1 } as const;

const radians = (deg: number) => (deg * Math.PI) / 180;

/** The four corners of a placed line of text. */
function textCorners(text: PlacedText): Point[] {
  const along = -BEFORE[text.anchor] * text.widthMm;
  const up = -ASCENT_EM * text.sizeMm;
  const down = DESCENT_EM * text.sizeMm;
  const cos = Math.cos(radians(text.angleDeg));
  const sin = Math.sin(radians(text.angleDeg));
  const corner = (x: number, y: number): Point => [
    text.at[0] + x * cos - y * sin,
    text.at[1] + x * sin + y * cos,
  ];
  return [
    corner(along, up),
    corner(along + text.widthMm, up),
    corner(along + text.widthMm, down),
    corner(along, down),
  ];
}

/** The upright rectangle round a placed line of text. */
export function textBox(text: PlacedText): Box {
  const box = emptyBox();
  for (const corner of textCorners(text)) include(box, corner);
  return box;
}

/** Remembers where words already stand. */
export class TakenSpots {
  readonly #boxes: Box[] = [];
  readonly #apartMm: number;

  constructor(apartMm: number) {
    this.#apartMm = apartMm;
  }

  isFree(box: Box): boolean {
    return !this.#boxes.some((taken) => overlaps(taken, box, this.#apartMm));
  }

  take(box: Box): void {
    this.#boxes.push(box);
  }
}
