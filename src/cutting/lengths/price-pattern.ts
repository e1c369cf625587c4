/** Types that a pattern may hold, what each is worth, and how often. */
export interface Worth {
  sizes: readonly number[];
  worth: ArrayLike<number>;
  limits: readonly number[];
}

/** A pattern by type and count; of no type where none is worth enough. */
export interface Priced {
  types: number[];
  counts: number[];
}

const SLIVER = 1e-9;

/**
 * The pattern of greatest worth on one length: bounded knapsack by depth-first search over the types in the order of
 * worth by size, cut off by the rest at the rate of the next type (Gilmore & Gomory, Operations Research 11, 1963;
 * Martello & Toth, Knapsack Problems, 1990, §2.5). Patterns worth no more than `above` are not looked for.
 *
 * @param mostNodes gives up after so many, with what it has
 */
export function pricePattern(
  { sizes, worth, limits }: Worth,
  room: number,
  above: number,
  mostNodes: number,
): Priced {
  const order: number[] = [];
  for (let type = 0; type < sizes.length; type++) {
    if ((worth[type] as number) > SLIVER && (limits[type] as number) > 0 && (sizes[type] as number) <= room) {
      order.push(type);
    }
  }
  const rate = (type: number) => (worth[type] as number) / (sizes[type] as number);
  order.sort((a, b) => rate(b) - rate(a) || a - b);
  const n = order.length;
  const size = Float64Array.from(order, (type) => sizes[type] as number);
  const value = Float64Array.from(order, (type) => worth[type] as number);
  const limit = order.map((type) => limits[type] as number);
  /** The smallest of the types from here on; behind the last nothing fits. */
  const smallest = new Float64Array(n + 1).fill(Number.POSITIVE_INFINITY);
  for (let k = n - 1; k >= 0; k--) smallest[k] = Math.min(smallest[k + 1] as number, size[k] as number);

  const taken = new Int32Array(n);
  let best = above;
  let bestTaken: Int32Array | undefined;
  let nodes = 0;

  const visit = (from: number, left: number, sum: number): void => {
    if (sum > best + SLIVER) {
      best = sum;
      bestTaken = taken.slice();
    }
    for (let k = from; nodes < mostNodes; k++) {
      if (left < (smallest[k] as number)) return;
      const [own, each] = [size[k] as number, value[k] as number];
      if (sum + (left * each) / own <= best + SLIVER) return;
      if (own > left) continue;
      for (let count = Math.min(limit[k] as number, Math.floor(left / own)); count > 0; count--) {
        nodes++;
        taken[k] = count;
        visit(k + 1, left - count * own, sum + count * each);
      }
      taken[k] = 0;
    }
  };
  visit(0, room, 0);

  const found = bestTaken ?? new Int32Array(n);
  const priced: Priced = { types: [], counts: [] };
  for (let k = 0; k < n; k++) {
    if ((found[k] as number) === 0) continue;
    priced.types.push(order[k] as number);
    priced.counts.push(found[k] as number);
  }
  return priced;
}
