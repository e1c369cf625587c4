import type { PieceType } from "./layer-prices.ts";

/** So many lengths of pieces, and so many sums. */
const MOST_LENGTHS = 48;
const LONGEST_BY_TALLEST = 1.35;
/** A length is as likely that of one piece as that of so many sums. */
const BY_ITSELF = 10;

/**
 * Lengths of layer that are worth a look: those of the pieces, and sums of two that are not much longer, of each kind
 * those that occur most often. The least comes first.
 *
 * @param table no sum is longer than that
 */
export function layerLengths(
  types: readonly PieceType[],
  demand: readonly number[],
  table: number,
): number[] {
  const count = demand.reduce((a, b) => a + b, 0);
  const tallest = types.reduce((most, { h }) => Math.max(most, h), 0);
  const longestSum = Math.min(tallest * LONGEST_BY_TALLEST, table);
  const weights = new Map<number, number>();
  const add = (length: number, weight: number) => {
    weights.set(length, (weights.get(length) ?? 0) + weight);
  };
  const shared = types.map(({ h, row }) => ({ h, share: (demand[row] as number) / count }));
  for (const [at, one] of shared.entries()) {
    add(one.h, BY_ITSELF * one.share);
    for (const other of shared.slice(at)) {
      const sum = one.h + other.h;
      if (sum <= longestSum) add(sum, one.share * other.share);
    }
  }
  const singles = new Set(types.map(({ h }) => h));
  const sorted = [...weights].sort((a, b) => b[1] - a[1] || a[0] - b[0]).map(([length]) => length);
  const own = sorted.filter((length) => singles.has(length)).slice(0, MOST_LENGTHS);
  const sums = sorted.filter((length) => !singles.has(length)).slice(0, MOST_LENGTHS);
  return [...new Set([...own, ...sums, tallest])].sort((a, b) => a - b);
}
