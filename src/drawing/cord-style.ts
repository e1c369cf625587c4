import type { Paint } from "./paints.ts";
import type { Stroke } from "./placed.ts";

/** How one cord is told from the others, wherever it is drawn or listed: by number, colour and rhythm. */
export interface CordStyle {
  number: number;
  label: string;
  paint: Paint;
  colourName: string;
  rhythmName: string;
  /** Solid line under the coloured one: it shows at the edges and in the gaps of the rhythm. */
  casing: Stroke;
  core: Stroke;
}

/** Strongest on paper first, so that a shade with few cords has the clearest ones. */
const COLOURS: readonly (readonly [Paint, string])[] = [
  ["cord-blue", "blue"],
  ["cord-vermillion", "vermillion"],
  ["cord-green", "green"],
  ["cord-orange", "orange"],
  ["cord-purple", "purple"],
  ["cord-sky", "sky blue"],
  ["cord-yellow", "yellow"],
  ["cord-black", "black"],
];

/**
 * Five rhythms against eight colours: forty cords before a pair comes back, and neighbours differ in both. Printed grey
 * the rhythm alone tells them apart.
 */
const RHYTHMS: readonly (readonly [string, readonly number[] | undefined])[] = [
  ["plain", undefined],
  ["long dashes", [3, 1.1]],
  ["dots", [0.5, 1.1]],
  ["dash and dot", [2.4, 1, 0.4, 1]],
  ["dashes far apart", [1.4, 2.6]],
];

export const CASING_MM = 0.8;
export const CORE_MM = 0.46;

/** @throws on a number below 1: a bug */
export function cordStyle(number: number): CordStyle {
  const [paint, colourName] = pick(COLOURS, number - 1);
  const [rhythmName, dashMm] = pick(RHYTHMS, number - 1);
  const black = paint === "cord-black";
  // Black in an ink casing would hide its rhythm, so the eighth is ink with marks of paper.
  const corePaint: Paint = black ? "paper" : paint;
  return {
    number,
    label: String(number),
    paint,
    colourName,
    rhythmName,
    casing: { paint: "ink", widthMm: CASING_MM },
    core: { paint: corePaint, widthMm: CORE_MM, ...(dashMm === undefined ? {} : { dashMm }) },
  };
}

function pick<T>(list: readonly T[], index: number): T {
  const item = list[((index % list.length) + list.length) % list.length];
  if (item === undefined) throw new Error(`invalid cord number: ${index + 1}`);
  return item;
}
