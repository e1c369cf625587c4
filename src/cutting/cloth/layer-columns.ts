import { type PatternColumn, PatternLp } from "../lengths/pattern-lp.ts";
import type { StepGrid } from "./grid.ts";
import { type LayerPattern, LayerPrices, type PieceType } from "./layer-prices.ts";

/** Lengths of layer that are priced: those of the pieces, and sums of two and three that are not much longer. */
const MOST_LENGTHS = 48;
const LONGEST_BY_TALLEST = 1.35;
const MOST_ROUNDS = 60;
/** Rounds after each layer that is fixed. */
const FEW_ROUNDS = 4;
/** Layers so nearly whole are cut without solving anew between them. */
const NEARLY_WHOLE = 0.75;
const BETTER = 1e-6;
/** New layers a round; it ends where so many rounds have gained less than this share. */
const MOST_NEW = 24;
const TAIL = 8;
const MOST_TRIES = 4;
const CROWDING = 0.6;
const LEAST_GAIN = 0.001;
/** Sizes that are looked at together: the work of a programme grows faster than what it finds. */
const MOST_TYPES = 96;
/** Pieces that are left for the other ways of search. */
const REST = 12;

/** Layers, how often each is cut, and what no layer holds. */
export interface LayerPlan {
  layers: LayerPattern[];
  types: readonly PieceType[];
  rest: number[];
}

/**
 * Large jobs with equal pieces: layers of columns by column generation, and whole numbers of layers by fixing those of
 * the linear programme from the fullest on and solving anew for what is left. Pauses after each round.
 */
export function* layerColumns(grid: StepGrid, width: number): Generator<void, LayerPlan> {
  const { types, demand } = typesOf(grid, width);
  const parts = Math.ceil(demand.length / MOST_TYPES);
  const whole: LayerPlan = { layers: [], types, rest: demand.map(() => 0) };
  // Rows lie from the longest pieces to the shortest, so every part has some of all lengths.
  for (let part = 0; part < parts; part++) {
    const plan = yield* columnsOf(
      grid.longestLayer,
      types,
      demand.map((count, row) => (row % parts === part ? count : 0)),
      width,
    );
    whole.layers.push(...plan.layers);
    for (const [row, count] of plan.rest.entries()) whole.rest[row] = (whole.rest[row] ?? 0) + count;
  }
  return whole;
}

function* columnsOf(
  table: number,
  all: readonly PieceType[],
  demand: readonly number[],
  width: number,
): Generator<void, LayerPlan> {
  const types = all.filter(({ row }) => (demand[row] ?? 0) > 0);
  const tallest = types.reduce((most, { h }) => Math.max(most, h), 0);
  const count = demand.reduce((a, b) => a + b, 0);
  const lengths = layerLengths(types, demand, tallest, count, table);
  const longest = lengths.reduce((most, length) => Math.max(most, length), 0);
  const prices = new LayerPrices(types, width, longest);
  const pool: LayerPattern[] = [];
  const plan: LayerPlan = { layers: [], types, rest: demand.slice() };
  let rounds = MOST_ROUNDS;
  while (plan.rest.reduce((a, b) => a + b, 0) > REST) {
    const used = yield* fractions({ types, lengths, prices, pool, rest: plan.rest, width }, rounds);
    rounds = FEW_ROUNDS;
    if (!fix(plan, used)) break;
  }
  const numbers = all.flatMap(({ row }, number) => ((demand[row] ?? 0) > 0 ? [number] : []));
  return { ...plan, layers: plan.layers.map((layer) => inAll(numbers, layer)) };
}

/** The same layer with the numbers of all types. */
function inAll(numbers: readonly number[], layer: LayerPattern): LayerPattern {
  const columns = layer.columns.map((column) => ({
    ...column,
    types: column.types.map((type) => numbers[type] ?? -1),
  }));
  return { ...layer, columns };
}

function typesOf({ items }: StepGrid, width: number): { types: PieceType[]; demand: number[] } {
  const rowOf = new Map<string, number>();
  const types: PieceType[] = [];
  const demand: number[] = [];
  const stiff = new Set(items.filter(({ turns }) => !turns).map(({ w, h }) => `${w} ${h}`));
  for (const { w, h } of items.toSorted((a, b) => b.h - a.h || b.w - a.w)) {
    // Where some may be turned and equal ones not, none is: that one problem is rare and not worth a row of its own.
    const key = `${w} ${h}`;
    let row = rowOf.get(key);
    if (row === undefined) {
      row = demand.length;
      rowOf.set(key, row);
      demand.push(0);
      if (w <= width) types.push({ w, h, turned: false, row });
      if (!stiff.has(key) && h <= width) types.push({ w: h, h: w, turned: true, row });
    }
    demand[row] = (demand[row] ?? 0) + 1;
  }
  return { types, demand };
}

/** All lengths of pieces, then sums, those that occur most often first. */
function layerLengths(
  types: readonly PieceType[],
  demand: readonly number[],
  tallest: number,
  count: number,
  table: number,
): number[] {
  const weights = new Map<number, number>();
  const most = Math.min(tallest * LONGEST_BY_TALLEST, Math.max(tallest, table));
  const add = (length: number, weight: number) => {
    if (length <= most) weights.set(length, (weights.get(length) ?? 0) + weight);
  };
  const share = types.map(({ row }) => (demand[row] ?? 0) / count);
  types.forEach(({ h }, a) => {
    const one = share[a] ?? 0;
    add(h, 10 * one);
    for (let b = a; b < types.length; b++) {
      const two = h + (types[b]?.h ?? 0);
      if (two > Math.min(most, table)) continue;
      add(two, one * (share[b] ?? 0));
    }
  });
  const singles = new Set(types.map(({ h }) => h));
  const sorted = [...weights].sort((a, b) => b[1] - a[1] || a[0] - b[0]).map(([length]) => length);
  const own = sorted.filter((length) => singles.has(length)).slice(0, MOST_LENGTHS);
  const sums = sorted.filter((length) => !singles.has(length)).slice(0, MOST_LENGTHS);
  return [...new Set([...own, ...sums, tallest])].sort((a, b) => a - b);
}

interface Programme {
  types: readonly PieceType[];
  lengths: readonly number[];
  prices: LayerPrices;
  pool: LayerPattern[];
  rest: readonly number[];
  width: number;
}

interface Used {
  layer: LayerPattern;
  amount: number;
}

function* fractions(programme: Programme, mostRounds: number): Generator<void, Used[]> {
  const { types, lengths, prices, pool, rest } = programme;
  const rows = rest.flatMap((count, row) => (count > 0 ? [row] : []));
  const at = new Map(rows.map((row, k) => [row, k]));
  const listed: LayerPattern[] = [];
  const columnOf = (layer: LayerPattern): PatternColumn => {
    const held = [...piecesByRow(types, layer)].filter(([row]) => at.has(row));
    return {
      cost: layer.length,
      rows: held.map(([row]) => at.get(row) as number),
      counts: held.map(([, count]) => count),
    };
  };
  const singles = rows.map((row) => trimmed(types, rest, singleLayer(programme, row)));
  listed.push(...singles);
  const lp = new PatternLp(
    rows.map((row) => rest[row] ?? 0),
    [],
    singles.map(columnOf),
  );
  const add = (layer: LayerPattern) => {
    listed.push(layer);
    lp.add(columnOf(layer));
  };
  for (const layer of pool) {
    const proper = trimmed(types, rest, layer);
    if (proper.columns.length > 0) add(proper);
  }
  const worth = new Float64Array(rest.length);
  const costs: number[] = [];
  for (let round = 0; round < mostRounds; round++) {
    yield* lp.solve();
    worth.fill(0);
    rows.forEach((row, k) => {
      worth[row] = Math.max(0, lp.duals[k] as number);
    });
    costs.push(rows.reduce((sum, row) => sum + (rest[row] ?? 0) * (worth[row] ?? 0), 0));
    const before = costs[costs.length - 1 - TAIL] ?? Number.POSITIVE_INFINITY;
    if ((costs[costs.length - 1] ?? 0) > before * (1 - LEAST_GAIN)) break;
    const price = () => {
      prices.setWorths(worth, rest);
      return lengths.flatMap((length) => {
        const best = prices.best(length, length * (1 + BETTER));
        const layer = best && trimmed(types, rest, best);
        if (best && layer !== best) for (const row of lackedBy(types, rest, best)) lacking.add(row);
        const reduced = layer ? lp.reducedCost(columnOf(layer)) / length : 0;
        return layer && reduced < -BETTER ? [{ layer, reduced }] : [];
      });
    };
    const lacking = new Set<number>();
    let found = price();
    // Layers that ask for more of a size than is left crowd out those that can be cut.
    for (let tries = 0; found.length === 0 && lacking.size > 0 && tries < MOST_TRIES; tries++) {
      for (const row of lacking) worth[row] = (worth[row] ?? 0) * CROWDING;
      lacking.clear();
      found = price();
    }
    found.sort((a, b) => a.reduced - b.reduced);
    for (const { layer } of found.slice(0, MOST_NEW)) {
      pool.push(layer);
      add(layer);
    }
    yield;
    if (found.length === 0) break;
  }
  yield* lp.solve();
  const index = new Map(lp.columns.map((column, k) => [column, listed[k] as LayerPattern]));
  return lp.used().map(({ column, amount }) => ({ layer: index.get(column) as LayerPattern, amount }));
}

function singleLayer({ types, width }: Programme, row: number): LayerPattern {
  let best: LayerPattern | undefined;
  types.forEach((one, type) => {
    if (one.row !== row) return;
    const count = Math.floor(width / one.w);
    const layer = {
      length: one.h,
      columns: Array.from({ length: count }, () => ({ width: one.w, types: [type] })),
    };
    if (!best || one.h / count < best.length / best.columns.length) best = layer;
  });
  return best ?? { length: 0, columns: [] };
}

/** How much a layer holds of each row of the demand. */
function piecesByRow(types: readonly PieceType[], layer: LayerPattern): Map<number, number> {
  const counts = new Map<number, number>();
  for (const { types: stack } of layer.columns) {
    for (const type of stack) {
      const row = types[type]?.row ?? -1;
      counts.set(row, (counts.get(row) ?? 0) + 1);
    }
  }
  return counts;
}

/** Rows of which a layer holds more than is left. */
function lackedBy(types: readonly PieceType[], rest: readonly number[], layer: LayerPattern): number[] {
  return [...piecesByRow(types, layer)]
    .filter(([row, count]) => count > (rest[row] ?? 0))
    .map(([row]) => row);
}

/** A layer without the pieces that are no longer wanted. */
function trimmed(types: readonly PieceType[], rest: readonly number[], layer: LayerPattern): LayerPattern {
  const left = new Map<number, number>();
  let whole = true;
  const columns = layer.columns.map((column) => {
    const kept = column.types.filter((type) => {
      const row = types[type]?.row ?? -1;
      const count = left.get(row) ?? rest[row] ?? 0;
      left.set(row, count - 1);
      return count > 0;
    });
    whole &&= kept.length === column.types.length;
    return { ...column, types: kept };
  });
  if (whole) return layer;
  const filled = columns.filter((column) => column.types.length > 0);
  const tallest = filled.reduce(
    (most, column) =>
      Math.max(
        most,
        column.types.reduce((sum, type) => sum + (types[type]?.h ?? 0), 0),
      ),
    0,
  );
  return { length: Math.min(layer.length, tallest), columns: filled };
}

/** Takes all whole layers, or the fullest one where there are none; false where nothing was taken. */
function fix(plan: LayerPlan, used: readonly Used[]): boolean {
  let taken = 0;
  const take = (layer: LayerPattern): void => {
    plan.layers.push(layer);
    taken++;
    for (const [row, count] of piecesByRow(plan.types, layer)) {
      plan.rest[row] = Math.max(0, (plan.rest[row] ?? 0) - count);
    }
  };
  const sorted = used.toSorted((a, b) => b.amount - a.amount);
  for (const { layer, amount } of sorted) {
    for (let n = 1; n <= amount + 1e-6 && isFull(plan, layer); n++) take(layer);
  }
  if (taken > 0) return true;
  // Nearly whole ones together: to solve anew for each would take too long.
  for (const { layer, amount } of sorted) {
    if (amount >= NEARLY_WHOLE && isFull(plan, layer)) take(layer);
  }
  const first = sorted.find(({ layer }) => isFull(plan, layer));
  if (taken === 0 && first) take(first.layer);
  return taken > 0;
}

/** Whether all that the layer holds is still wanted. */
function isFull({ types, rest }: LayerPlan, layer: LayerPattern): boolean {
  return lackedBy(types, rest, layer).length === 0;
}
