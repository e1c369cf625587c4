import { barsCost, type PatternBar, TO_MEASURE } from "./bar-pattern.ts";
import type { WholeLengths, WholeStock } from "./whole-lengths.ts";

interface Open extends PatternBar {
  room: number;
}

/** Best-fit looks at every bar for every cut. */
const MOST_FOR_BEST_FIT = 2000;

/**
 * First-fit and best-fit decreasing: what is at hand first, the shortest piece of it first, then new lengths of each
 * kind in turn; the cheapest filling wins. Undefined where a cut fits nothing that can be had.
 *
 * @param demand how many of each type are wanted
 * @param available how many of each stock there are
 */
export function fillFirst(
  whole: WholeLengths,
  demand: readonly number[] = whole.demand,
  available: readonly number[] = whole.stock.map((one) => one.available),
): PatternBar[] | undefined {
  const unlimited = whole.stock.flatMap((_, s) => (available[s] === Number.POSITIVE_INFINITY ? [s] : []));
  const openers = unlimited.length === 0 ? [TO_MEASURE] : unlimited;
  let best: PatternBar[] | undefined;
  let bestCost = Number.POSITIVE_INFINITY;
  const few = demand.reduce((sum, count) => sum + count, 0) <= MOST_FOR_BEST_FIT;
  for (const opener of openers) {
    for (const bestFit of few ? [false, true] : [false]) {
      // One bar cannot be filled otherwise.
      if (bestFit && best && best.length < 2) break;
      const bars = fillBy(whole, demand, available, { opener, unlimited, bestFit });
      if (bars === undefined) return undefined;
      const fitted = unlimited.length > 1 ? bars.map((bar) => onCheapest(whole, bar, unlimited)) : bars;
      const cost = barsCost(whole, fitted);
      if (cost < bestCost) [best, bestCost] = [fitted, cost];
    }
  }
  return best;
}

interface Way {
  opener: number;
  unlimited: readonly number[];
  bestFit: boolean;
}

function fillBy(
  whole: WholeLengths,
  demand: readonly number[],
  available: readonly number[],
  way: Way,
): PatternBar[] | undefined {
  const open = atHand(whole, available, demand);
  const toMeasure: PatternBar[] = [];
  for (let type = 0; type < demand.length; type++) {
    const size = whole.sizes[type] as number;
    let from = 0;
    for (let n = demand[type] as number; n > 0; n--) {
      // Of equal cuts none can fit where the one before did not.
      let at = way.bestFit ? bestPlace(open, size) : firstPlace(open, size, from);
      from = at;
      if (at === open.length) {
        const stock = openerFor(whole, size, way);
        if (stock === undefined) {
          if (whole.toMeasure === undefined) return undefined;
          toMeasure.push({ stock: TO_MEASURE, types: [type] });
          continue;
        }
        at = open.push({ stock, types: [], room: whole.stock[stock]?.size ?? 0 }) - 1;
      }
      const bar = open[at] as Open;
      bar.types.push(type);
      bar.room -= size;
    }
  }
  const used = open.filter((bar) => bar.types.length > 0).map(({ stock, types }) => ({ stock, types }));
  return used.concat(toMeasure);
}

/** pieces in stock that hold anything at all, the shortest first, and no more of them than there are cuts. */
function atHand(whole: WholeLengths, available: readonly number[], demand: readonly number[]): Open[] {
  const smallest = Math.min(...whole.sizes.filter((_, type) => (demand[type] as number) > 0));
  const cuts = demand.reduce((sum, count) => sum + count, 0);
  const limited = [...whole.stock.keys()].filter(
    (s) => available[s] !== Number.POSITIVE_INFINITY && (whole.stock[s] as WholeStock).size >= smallest,
  );
  limited.sort((a, b) => (whole.stock[a]?.size ?? 0) - (whole.stock[b]?.size ?? 0));
  return limited.flatMap((stock) =>
    Array.from({ length: Math.min(available[stock] as number, cuts) }, () => ({
      stock,
      types: [],
      room: whole.stock[stock]?.size ?? 0,
    })),
  );
}

function firstPlace(open: readonly Open[], size: number, from: number): number {
  let at = from;
  while (at < open.length && (open[at] as Open).room < size) at++;
  return at;
}

function bestPlace(open: readonly Open[], size: number): number {
  let best = open.length;
  let least = Number.POSITIVE_INFINITY;
  for (let at = 0; at < open.length; at++) {
    const { room } = open[at] as Open;
    if (room >= size && room < least) [best, least] = [at, room];
    if (room === size) break;
  }
  return best;
}

function openerFor(whole: WholeLengths, size: number, { opener, unlimited }: Way): number | undefined {
  const holds = (stock: number) => (whole.stock[stock]?.size ?? 0) >= size;
  if (holds(opener)) return opener;
  return cheapest(whole, unlimited.filter(holds));
}

function cheapest(whole: WholeLengths, stocks: readonly number[]): number | undefined {
  let best: number | undefined;
  for (const stock of stocks) {
    if (best === undefined || (whole.stock[stock]?.cost ?? 0) < (whole.stock[best]?.cost ?? 0)) best = stock;
  }
  return best;
}

/** The cheapest length that is sold and holds what is on the bar. */
function onCheapest(whole: WholeLengths, bar: PatternBar, unlimited: readonly number[]): PatternBar {
  if (!unlimited.includes(bar.stock)) return bar;
  const used = bar.types.reduce((sum, type) => sum + (whole.sizes[type] as number), 0);
  const holding = unlimited.filter((one) => (whole.stock[one]?.size as number) >= used);
  return { stock: cheapest(whole, holding) as number, types: bar.types };
}
