import type { WholeLengths } from "./whole-lengths.ts";

/** What comes off one length: stock by its index, or -1 for a cut bought to measure; types with repetition. */
export interface PatternBar {
  stock: number;
  types: number[];
}

export const TO_MEASURE = -1;

/** What these bars cost in the weights of the search: whole lengths, or what is bought to measure. */
export function barsCost(whole: WholeLengths, bars: readonly PatternBar[]): number {
  let cost = 0;
  for (const { stock, types } of bars) {
    cost +=
      stock === TO_MEASURE ? (whole.toMeasure?.[types[0] as number] ?? 0) : (whole.stock[stock]?.cost ?? 0);
  }
  return cost;
}

/** Cells that are left free on a bar. */
export function roomOn(whole: WholeLengths, { stock, types }: PatternBar): number {
  let room = whole.stock[stock]?.size ?? 0;
  for (const type of types) room -= whole.sizes[type] as number;
  return room;
}
