import { type PatternBar, TO_MEASURE } from "./bar-pattern.ts";
import type { WholeLengths } from "./whole-lengths.ts";

/** Beyond so many placings it gives up. */
const MOST_NODES = 200_000;

/**
 * Every placing of every cut, cut off where it can get no cheaper: for a handful of cuts.
 *
 * @param below plans that cost no less are not looked for
 * @returns the cheapest plan below that, if there is one, and whether every placing was looked at
 */
export function tryAll(
  whole: WholeLengths,
  below: number,
): { bars: PatternBar[] | undefined; proved: boolean } {
  const cuts = whole.demand.flatMap((count, type) => Array.from({ length: count }, () => type));
  const left = whole.stock.map(({ available }) => Math.min(available, cuts.length));
  const open: { bar: PatternBar; room: number }[] = [];
  let best: PatternBar[] | undefined;
  let least = below;
  let nodes = 0;

  const place = (index: number, cost: number): void => {
    if (cost >= least - SLIVER || nodes++ > MOST_NODES) return;
    const type = cuts[index];
    if (type === undefined) {
      least = cost;
      best = open.map(({ bar }) => ({ stock: bar.stock, types: [...bar.types] }));
      return;
    }
    const size = whole.sizes[type] as number;
    const tried = new Set<number>();
    for (const one of open) {
      if (one.room < size || one.bar.stock === TO_MEASURE || tried.has(one.room)) continue;
      tried.add(one.room);
      one.bar.types.push(type);
      one.room -= size;
      place(index + 1, cost);
      one.room += size;
      one.bar.types.pop();
    }
    whole.stock.forEach((stock, s) => {
      if ((left[s] as number) === 0 || stock.size < size) return;
      left[s] = (left[s] as number) - 1;
      begin({ stock: s, types: [type] }, stock.size - size, index, cost + stock.cost);
      left[s] = (left[s] as number) + 1;
    });
    if (whole.toMeasure) {
      begin({ stock: TO_MEASURE, types: [type] }, 0, index, cost + (whole.toMeasure[type] as number));
    }
  };
  const begin = (bar: PatternBar, room: number, index: number, cost: number): void => {
    open.push({ bar, room });
    place(index + 1, cost);
    open.pop();
  };
  place(0, 0);
  return { bars: best, proved: nodes <= MOST_NODES };
}

const SLIVER = 1e-9;
