import { TO_MEASURE } from "./bar-pattern.ts";
import { type PatternColumn, PatternLp } from "./pattern-lp.ts";
import { pricePattern } from "./price-pattern.ts";
import type { WholeLengths } from "./whole-lengths.ts";

/** What one length can give: stock by index, and how many of each type. */
export interface Pattern {
  stock: number;
  types: readonly number[];
  counts: readonly number[];
}

/** What is still wanted, and what is still there. */
export interface Rest {
  demand: readonly number[];
  available: readonly number[];
}

/** Fractions of patterns that meet a demand at the least cost, and what one more of each type would cost. */
export interface Fractions {
  used: { pattern: Pattern; amount: number }[];
  duals: Float64Array;
}

/** A pattern must be worth more than its length by this share of the dearest to count as better. */
const BETTER = 1e-7;
const MOST_NODES = 50_000;
/** An artificial pattern is dearer than all stock together, so that it is used only where nothing else can be. */
const ARTIFICIAL = -2;

/**
 * Column generation after Gilmore and Gomory (Operations Research 9, 1961; 11, 1963): solves over the patterns at hand,
 * prices a better one for each stock, and so on until there is none. Yields after each round.
 *
 * @param pool patterns to begin with; better ones are added to it
 */
export function* generatePatterns(
  whole: WholeLengths,
  rest: Rest,
  pool: Pattern[],
): Generator<void, Fractions, void> {
  const types = whole.sizes.flatMap((_, type) => ((rest.demand[type] as number) > 0 ? [type] : []));
  const rowOf = new Map(types.map((type, row) => [type, row]));
  const limited = whole.stock.flatMap((_, s) => {
    const available = rest.available[s] as number;
    return Number.isFinite(available) && available > 0 ? [s] : [];
  });
  const stockRow = new Map(limited.map((stock, k) => [stock, types.length + k]));
  const dearest = whole.stock.reduce((most, { cost }) => Math.max(most, cost), 0);
  const columnOf = ({ stock, types: held, counts }: Pattern): PatternColumn => ({
    cost: patternCost(whole, stock, held[0] as number, dearest),
    rows: held.map((type) => rowOf.get(type) as number),
    counts,
    stockRow: stockRow.get(stock),
  });
  const listed: Pattern[] = types.map((type) => single(whole, rest, type));
  const lp = new PatternLp(
    types.map((type) => rest.demand[type] as number),
    limited.map((stock) => rest.available[stock] as number),
    listed.map(columnOf),
  );
  for (const pattern of pool) {
    if (!isProper(pattern, rest)) continue;
    listed.push(pattern);
    lp.add(columnOf(pattern));
  }
  const worth = new Float64Array(whole.sizes.length);
  for (;;) {
    yield* lp.solve();
    yield;
    worth.fill(0);
    for (const [type, row] of rowOf) worth[type] = lp.duals[row] as number;
    let found = false;
    for (const [s, { size, cost }] of whole.stock.entries()) {
      const available = rest.available[s] as number;
      if (available <= 0) continue;
      const row = stockRow.get(s);
      const above =
        cost - (row === undefined ? 0 : (lp.duals[row] as number)) + BETTER * Math.max(1, dearest);
      const priced = pricePattern(
        { sizes: whole.sizes, worth, limits: rest.demand },
        size,
        above,
        MOST_NODES,
      );
      if (priced.types.length === 0) continue;
      const pattern = { stock: s, types: priced.types, counts: priced.counts };
      pool.push(pattern);
      listed.push(pattern);
      lp.add(columnOf(pattern));
      found = true;
    }
    if (!found) break;
  }
  const byColumn = new Map(lp.columns.map((column, k) => [column, listed[k] as Pattern]));
  return {
    used: lp.used().map(({ column, amount }) => ({ pattern: byColumn.get(column) as Pattern, amount })),
    duals: worth,
  };
}

function isProper({ stock, types, counts }: Pattern, { demand, available }: Rest): boolean {
  return (
    (available[stock] as number) > 0 &&
    types.every((type, k) => (counts[k] as number) <= (demand[type] as number))
  );
}

function patternCost(whole: WholeLengths, stock: number, type: number, dearest: number): number {
  if (stock === TO_MEASURE) return whole.toMeasure?.[type] as number;
  if (stock === ARTIFICIAL) return 1000 * Math.max(1, dearest);
  return whole.stock[stock]?.cost as number;
}

/** A length with one type alone, from the stock that is cheapest for it. */
function single(whole: WholeLengths, { demand, available }: Rest, type: number): Pattern {
  let best: Pattern = { stock: ARTIFICIAL, types: [type], counts: [1] };
  let least = Number.POSITIVE_INFINITY;
  if (whole.toMeasure) {
    best = { stock: TO_MEASURE, types: [type], counts: [1] };
    least = whole.toMeasure[type] as number;
  }
  for (const [s, { size, cost }] of whole.stock.entries()) {
    const count = Math.min(demand[type] as number, Math.floor(size / (whole.sizes[type] as number)));
    if (available[s] !== Number.POSITIVE_INFINITY || count === 0 || cost / count >= least) continue;
    least = cost / count;
    best = { stock: s, types: [type], counts: [count] };
  }
  return best;
}
