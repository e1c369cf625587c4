import { farley } from "../lengths/farley.ts";
import { type PatternColumn, PatternLp } from "../lengths/pattern-lp.ts";
import { pricePattern } from "../lengths/price-pattern.ts";

/** Strips one step long across the cloth: how much of each width is wanted, and off which cloth. */
export interface Bars {
  widths: readonly number[];
  /** How many of a width there are, so how often a strip can hold it. */
  limits: readonly number[];
  /** Length wanted of each width. */
  demand: readonly number[];
  /** Pieces that lie one way or the other: so much of one width, or so much of the other. */
  turning: readonly { upright: Share; turned: Share }[];
  stock: readonly { width: number; length: number; cost: number }[];
}

interface Share {
  width: number;
  length: number;
}

const MOST_NODES = 20_000;
const MOST_ROUNDS = 2000;
const BETTER = 1e-7;
/** No bolt costs so much per step: a strip that cannot be is dearer than all that can. */
const DEAR = 1e4;

/**
 * No plan costs less than its strips cut apart and put together anew, widths by width: the bar relaxation of strip
 * packing (Scheithauer; Belov, Kartak, Rohling and Scheithauer, International Transactions in Operational Research 16,
 * 2009), over several widths of cloth. Column generation finds the worth of each width; what those worths prove is
 * worked out anew, so that it holds however exact they are. Pauses after each round.
 */
export function* barBound(bars: Bars): Generator<void, BarBound> {
  const supply = bars.stock.filter(({ length }) => Number.isFinite(length));
  const dearest = bars.stock.reduce((most, { cost }) => Math.max(most, cost), 0);
  const total =
    bars.demand.reduce((a, b) => a + b, 0) + bars.turning.reduce((a, t) => a + t.turned.length, 0);
  const demand = bars.demand.slice();
  for (const { turned } of bars.turning) demand[turned.width] = (demand[turned.width] ?? 0) + turned.length;
  const rows = bars.widths.length;
  const lp = new PatternLp(
    demand.map((length) => length / total),
    supply.map(({ length }) => length / total),
    bars.widths.map((width, row) => single(bars, width, row, dearest)),
  );
  for (const { upright, turned } of bars.turning) {
    lp.add({
      cost: 0,
      rows: [upright.width, turned.width],
      counts: [-upright.length / total, turned.length / total],
    });
  }
  const worth = new Float64Array(rows);
  let best: BarBound | undefined;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    yield* lp.solve();
    for (let row = 0; row < rows; row++) worth[row] = Math.max(0, lp.duals[row] as number);
    if (!addPatterns(bars, lp, worth, supply, dearest)) break;
    if (round % 50 === 49) best = better(best, proven(bars, worth));
    yield;
  }
  return better(best, proven(bars, worth));
}

/** A bound on the cost, and what a step of each width is worth by it. */
export interface BarBound {
  cost: number;
  worth: readonly number[];
}

function better(a: BarBound | undefined, b: BarBound): BarBound {
  return a && a.cost > b.cost ? a : b;
}

function single(bars: Bars, width: number, row: number, dearest: number): PatternColumn {
  const endless = bars.stock.find(({ length }) => !Number.isFinite(length));
  const count = Math.min(bars.limits[row] ?? 0, Math.floor((endless?.width ?? 0) / width));
  return endless === undefined || count === 0
    ? { cost: DEAR * dearest, rows: [row], counts: [1] }
    : { cost: endless.cost, rows: [row], counts: [count] };
}

function addPatterns(
  bars: Bars,
  lp: PatternLp,
  worth: Float64Array,
  supply: readonly Bars["stock"][number][],
  dearest: number,
): boolean {
  let found = false;
  for (const stock of bars.stock) {
    const at = supply.indexOf(stock);
    const stockRow = at < 0 ? undefined : bars.widths.length + at;
    const above = stock.cost - (stockRow === undefined ? 0 : (lp.duals[stockRow] ?? 0)) + BETTER * dearest;
    const priced = pricePattern(
      { sizes: bars.widths, worth, limits: bars.limits },
      stock.width,
      above,
      MOST_NODES,
    );
    if (priced.types.length === 0) continue;
    const column: PatternColumn = { cost: stock.cost, rows: priced.types, counts: priced.counts };
    lp.add(stockRow === undefined ? column : { ...column, stockRow });
    found = true;
  }
  return found;
}

/** What any worths of the widths prove. */
function proven(bars: Bars, duals: Float64Array): BarBound {
  const stock = bars.stock.map(({ width, length, cost }) => ({ size: width, available: length, cost }));
  const { worth, held } = farley({ sizes: bars.widths, worth: duals, limits: bars.limits }, stock);
  const worthOf = ({ width, length }: Share) => (worth[width] ?? 0) * length;
  let bound = 0;
  for (const [width, length] of bars.demand.entries()) bound += worthOf({ width, length });
  for (const { upright, turned } of bars.turning) bound += Math.min(worthOf(upright), worthOf(turned));
  return { cost: bound - held, worth };
}
