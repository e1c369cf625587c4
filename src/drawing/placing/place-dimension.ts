import type { Dimension, Point } from "../model.ts";
import type { PlacedCommon, PlacedItem, PlacedText, Stroke } from "../placed.ts";
import { LOOKS, TICK_PEN } from "../style.ts";
import { type LineOfText, lineOfText, uprightDeg } from "./line-of-text.ts";
import { commonOf, type Scaling, toPaper } from "./scaling.ts";
import { type TakenSpots, textBox } from "./text-box.ts";
import { textWidthEm } from "./text-width.ts";

/** Sizes on paper of dimension lines, mm. */
export const DIMENSION_TEXT_MM = 2.9;
const TEXT_GAP_MM = 0.9;
const TICK_MM = 2.2;
const EXTENSION_GAP_MM = 0.9;
export const OVERSHOOT_MM = 1.3;
const TEXT_PAD_MM = 0.8;

const LINE_PEN: Stroke = LOOKS.dimension.stroke ?? TICK_PEN;

/** A dimension line in paper space: its ends, its direction and the side that its offset points to. */
export interface DimensionLine {
  from: Point;
  to: Point;
  along: Point;
  out: Point;
  lengthMm: number;
}

export const add = (a: Point, b: Point, times = 1): Point => [a[0] + b[0] * times, a[1] + b[1] * times];

export function dimensionLine(dimension: Dimension, scaling: Scaling): DimensionLine {
  const from = toPaper(dimension.from, scaling, dimension.shiftPaperMm);
  const to = toPaper(dimension.to, scaling, dimension.shiftPaperMm);
  const lengthMm = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const along: Point = lengthMm > 0 ? [(to[0] - from[0]) / lengthMm, (to[1] - from[1]) / lengthMm] : [1, 0];
  // Left of the way from→to on a page whose y runs down.
  const left: Point = [along[1], -along[0]];
  const offset = dimension.offsetPaperMm * scaling.textScale;
  const out: Point = offset < 0 ? [-left[0], -left[1]] : left;
  return { from: add(from, left, offset), to: add(to, left, offset), along, out, lengthMm };
}

/** Thin lines from the measured points to the dimension line. */
export function extensionLines(dimension: Dimension, line: DimensionLine, k: number): Point[][] {
  const reach = Math.abs(dimension.offsetPaperMm) * k;
  if (reach < (EXTENSION_GAP_MM + 0.5) * k) return [];
  const one = (foot: Point): Point[] => [
    add(foot, line.out, -(reach - EXTENSION_GAP_MM * k)),
    add(foot, line.out, OVERSHOOT_MM * k),
  ];
  return [one(line.from), one(line.to)];
}

/** Oblique strokes across the ends, at half a right angle to the line. */
export function tick(at: Point, along: Point, k: number): Point[] {
  const half = (TICK_MM / 2) * k * Math.SQRT1_2;
  const slant: Point = [along[0] + along[1], along[1] - along[0]];
  return [add(at, slant, -half), add(at, slant, half)];
}

export const path = (common: PlacedCommon, lines: Point[][], stroke: Stroke): PlacedItem => ({
  kind: "path",
  ...common,
  lines,
  closed: false,
  stroke,
});

export const dimensionWords = (dimension: Dimension): string =>
  dimension.label === undefined ? dimension.text : `${dimension.label} ${dimension.text}`;

interface Try {
  text: PlacedText;
  /** Where the line must reach to carry its words. */
  reach?: Point[];
}

export function placeDimension(dimension: Dimension, scaling: Scaling, taken: TakenSpots): PlacedItem[] {
  const k = scaling.textScale;
  const common = commonOf(dimension);
  const line = dimensionLine(dimension, scaling);
  const tries = waysToWrite(dimension, line, common, k);
  const free = tries.find(({ text }) => taken.isFree(textBox(text)));
  const best = free ?? (dimension.yields === true ? undefined : tries[0]);
  if (best === undefined) return [];
  taken.take(textBox(best.text));
  const lines = [...extensionLines(dimension, line, k), [line.from, line.to]];
  if (best.reach !== undefined) lines.push(best.reach);
  return [
    path(common, lines, LINE_PEN),
    path(common, [tick(line.from, line.along, k), tick(line.to, line.along, k)], TICK_PEN),
    best.text,
  ];
}

/** Ways to write the length, best first: along the line where it fits, else beside it or beyond its ends. */
function waysToWrite(dimension: Dimension, line: DimensionLine, common: PlacedCommon, k: number): Try[] {
  const text = dimensionWords(dimension);
  const sizeMm = DIMENSION_TEXT_MM * k;
  const widthMm = textWidthEm(text) * sizeMm;
  const angleDeg = uprightDeg((Math.atan2(line.along[1], line.along[0]) * 180) / Math.PI);
  const angle = (angleDeg * Math.PI) / 180;
  const up: Point = [Math.sin(angle), -Math.cos(angle)];
  const middle = add(line.from, line.along, line.lengthMm / 2);
  const ground = dimension.ground ?? "label";
  const write = (at: Point, rest: Partial<LineOfText>): PlacedText =>
    lineOfText({ at, text, sizeMm, anchor: "middle", baseline: "bottom", angleDeg, ground, ...rest }, common);
  const above = { text: write(add(middle, up, TEXT_GAP_MM * 0.6 * k), { baseline: "bottom" }) };
  const below = { text: write(add(middle, up, -TEXT_GAP_MM * 0.6 * k), { baseline: "top" }) };
  if (widthMm + 2 * TEXT_PAD_MM * k <= line.lengthMm) return [above, below];
  const beyond = (foot: Point, way: 1 | -1): Try => {
    const centre = add(foot, line.along, way * (widthMm / 2 + 1.8 * k));
    return {
      text: write(add(centre, up, TEXT_GAP_MM * 0.6 * k), { baseline: "bottom" }),
      reach: [foot, add(foot, line.along, way * (widthMm + 2.6 * k))],
    };
  };
  const ends = [beyond(line.to, 1), beyond(line.from, -1)];
  const isUpright = Math.abs(line.along[1]) > 0.9;
  const beside: Try = {
    text: write(add(middle, line.out, 1.8 * k), {
      angleDeg: 0,
      anchor: line.out[0] < 0 ? "end" : "start",
      baseline: "middle",
    }),
  };
  return isUpright ? [beside, ...ends, above, below] : [...ends, above, below];
}
