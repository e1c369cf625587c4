import type { Worth } from "./price-pattern.ts";
import type { WholeStock } from "./whole-lengths.ts";
import { worthTable } from "./worth-table.ts";

/**
 * Any worths of the cuts made into ones that prove a bound, by weak duality of the pattern programme: scaled down where
 * a pattern of a sold length is worth more than the length costs (Farley, Operations Research 38, 1990, 922–923). What
 * is wanted costs at least the sum of its worths, less `held`: what patterns of the stock at hand are worth beyond its
 * cost.
 */
export function farley(given: Worth, stock: readonly WholeStock[]): { worth: number[]; held: number } {
  const longest = stock.reduce((most, { size }) => Math.max(most, size), 0);
  const table = worthTable(given, longest);
  const sold = stock.filter(({ available }) => !Number.isFinite(available));
  let scale = 1;
  for (const { size, cost } of sold) {
    const most = table.on(size);
    if (most > cost) scale = Math.min(scale, cost / most);
  }
  let held = 0;
  for (const { size, cost, available } of stock) {
    if (Number.isFinite(available)) held += available * Math.max(0, scale * table.on(size) - cost);
  }
  return { worth: table.worth.map((each) => scale * each), held };
}
