import type { FoldLevel } from "./fold-level.ts";
import { FOLD_TABLE } from "./fold-table.ts";

/** Where a weight lies in the table. */
export interface LevelPosition {
  /** Its row at or below the weight, and the next. */
  low: number;
  below: FoldLevel;
  next: FoldLevel;
  /** How far on to the next by the logarithm of the weight. */
  part: number;
  /** ∛(λ over the last row's) where that is over 1. */
  above: number;
}

/**
 * The place of a weight λ in the table.
 *
 * @throws on a weight below 0 or none
 */
export function foldLevel(weight: number): LevelPosition {
  if (!(weight >= 0)) throw new Error(`invalid weight: ${weight}`);
  const last = FOLD_TABLE.length - 1;
  const place = Math.min(last, Math.max(0, Math.log2(weight)));
  const low = Math.min(last - 1, Math.floor(place));
  const [below, next] = [FOLD_TABLE[low], FOLD_TABLE[low + 1]];
  if (below === undefined || next === undefined) throw new Error("invalid table: a level is missing");
  return { low, below, next, part: place - low, above: Math.cbrt(Math.max(1, weight / 2 ** last)) };
}
