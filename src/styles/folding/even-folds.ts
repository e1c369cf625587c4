import { MOST_ROWS } from "../base/even-rows.ts";
import type { FoldLayout, Unmet } from "./folds.ts";

/**
 * The even-fold rule of the teaching slides “Подъемные шторы”: whole folds between the hem bar and the
 * headrail, their number from the stack that is aimed at.
 *
 * The slides round the number of folds to the nearest, which breaks their own stack limit
 * (172 cm, stack 20 cm: 6 folds of 27.5 cm stack to 20.75 cm); here it is rounded up.
 */
export interface EvenFoldAsk {
  lengthMm: number;
  headrailMm: number;
  hemBarMm: number;
  ringStackMm: number;
  largestFoldMm: number;
  smallestFoldMm: number;
  stackMm?: number;
  rows?: number;
}

/** The fewest whole folds that keep to the largest fold and to the stack, at least one. */
export function evenFoldCount(ask: EvenFoldAsk): number {
  const clear = clearLengthMm(ask);
  const byStack =
    ask.stackMm === undefined
      ? Number.POSITIVE_INFINITY
      : 2 * (ask.stackMm - ask.headrailMm - ask.ringStackMm);
  const limit = Math.max(ask.smallestFoldMm, Math.min(ask.largestFoldMm, byStack));
  return Math.min(MOST_ROWS, Math.max(1, Math.ceil(clear / limit - 1e-9)));
}

function clearLengthMm(ask: EvenFoldAsk): number {
  return Math.max(ask.lengthMm / 3, ask.lengthMm - ask.headrailMm - ask.hemBarMm);
}

/** Whole folds between hem bar and headrail, all alike; `unmet` names what was asked for and does not hold. */
export function layEvenFolds(ask: EvenFoldAsk): FoldLayout {
  const rows = ask.rows ?? evenFoldCount(ask);
  const clear = clearLengthMm(ask);
  const short = ask.lengthMm - ask.headrailMm - ask.hemBarMm < ask.smallestFoldMm;
  const foldMm = clear / rows;
  const hemBarMm = short ? Math.min(ask.hemBarMm, ask.lengthMm / 3) : ask.hemBarMm;
  const headrailMm = ask.lengthMm - clear - hemBarMm;
  const raisedHeightMm = headrailMm + ask.ringStackMm + Math.max(foldMm / 2, hemBarMm);
  const unmet: Unmet[] = [];
  if (short) unmet.push("length");
  if (foldMm > ask.largestFoldMm + 1e-6) unmet.push("largest");
  if (foldMm < ask.smallestFoldMm - 1e-6) unmet.push("smallest");
  if (ask.stackMm !== undefined && raisedHeightMm > ask.stackMm + 1e-6) unmet.push("stack");
  return {
    foldsMm: Array.from({ length: rows }, () => foldMm),
    bottomSectionMm: hemBarMm,
    headrailMm,
    skirtMm: 0,
    raisedHeightMm,
    travelMm: Math.max(0, ask.lengthMm - hemBarMm - headrailMm - ask.ringStackMm),
    unmet,
  };
}
