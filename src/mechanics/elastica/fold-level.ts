import { FOLD_TABLE } from "./fold-table.ts";

/** What the solvers found for folds of one weight. */
export interface FoldLevel {
  /** Half the angle of a drop that hangs free. */
  freeRad: number;
  /** Moments that press it to the shares of `DROP_SHARES` after the first, in units of B/a. */
  moments: readonly number[];
  /** As in `FoldOpening`. */
  startShare: number;
  outShare: number;
}

/** Weight of a fold against its stiffness, λ = w a³/B with a half of its cloth. */
export function foldWeight(
  { weightNPerMm2, rigidityNmm }: { weightNPerMm2: number; rigidityNmm: number },
  arcMm: number,
): number {
  return (weightNPerMm2 * (arcMm / 2) ** 3) / rigidityNmm;
}

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

export function foldLevel(weight: number): LevelPosition {
  if (!(weight >= 0)) throw new Error(`invalid weight: ${weight}`);
  const last = FOLD_TABLE.length - 1;
  const place = Math.min(last, Math.max(0, Math.log2(weight)));
  const low = Math.min(last - 1, Math.floor(place));
  const [below, next] = [FOLD_TABLE[low], FOLD_TABLE[low + 1]];
  if (below === undefined || next === undefined) throw new Error("invalid table: a level is missing");
  return { low, below, next, part: place - low, above: Math.cbrt(Math.max(1, weight / 2 ** last)) };
}
