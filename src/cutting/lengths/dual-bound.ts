import { raisedToStep, type WholeLengths } from "./whole-lengths.ts";
import { worthTable } from "./worth-table.ts";

/**
 * No plan costs less, whatever the worths are: the weak duality of the pattern programme, with Farley's scaling where a
 * pattern of a sold length is worth more than the length costs (Farley, Operations Research 38, 1990, 922–923). With
 * worths from a solved programme it is its value; with rounded or unfinished ones it is only lower, never wrong.
 */
export function dualBound(whole: WholeLengths, duals: ArrayLike<number>): number {
  const { sizes, demand, stock, toMeasure } = whole;
  const wanted = sizes.map((_, type) => {
    const dual = Math.max(0, duals[type] as number);
    return toMeasure ? Math.min(dual, toMeasure[type] as number) : dual;
  });
  const longest = stock.reduce((most, { size }) => Math.max(most, size), 0);
  const table = worthTable({ sizes, worth: wanted, limits: demand }, longest);
  let scale = 1;
  for (const { size, cost, available } of stock) {
    const worth = table.on(size);
    if (available === Number.POSITIVE_INFINITY && worth > cost) scale = Math.min(scale, cost / worth);
  }
  let bound = 0;
  for (const [type, worth] of table.worth.entries()) bound += scale * worth * (demand[type] as number);
  for (const { size, cost, available } of stock) {
    if (available === Number.POSITIVE_INFINITY) continue;
    bound -= available * Math.max(0, scale * table.on(size) - cost);
  }
  return Math.max(0, raisedToStep(bound, whole.costStep));
}
