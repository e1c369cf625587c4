import { type PatternColumn, PatternLp } from "../lengths/pattern-lp.ts";
import type { StepGrid } from "./grid.ts";
import { layerLengths } from "./layer-lengths.ts";
import { type LayerPattern, LayerPrices, type PieceType } from "./layer-prices.ts";
import { pieceTypes } from "./piece-types.ts";
import {
  type LayerPlan,
  lackedBy,
  piecesByRow,
  takeLayers,
  type UsedLayer,
  withoutUnwanted,
} from "./wanted-layers.ts";

const MOST_ROUNDS = 60;
/** Rounds after each layer that is fixed. */
const FEW_ROUNDS = 4;
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

/**
 * Large jobs with equal pieces: layers of columns by column generation, and whole numbers of layers by fixing those of
 * the linear programme from the fullest on and solving anew for what is left. Pauses after each round.
 */
export function* layerColumns(grid: StepGrid, width: number): Generator<void, LayerPlan> {
  const { types, demand } = pieceTypes(grid.items, width);
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
  const lengths = layerLengths(types, demand, table);
  const prices = new LayerPrices(types, width, lengths.at(-1) as number);
  const pool: LayerPattern[] = [];
  const plan: LayerPlan = { layers: [], types, rest: demand.slice() };
  let rounds = MOST_ROUNDS;
  while (plan.rest.reduce((a, b) => a + b, 0) > REST) {
    const used = yield* fractions({ types, lengths, prices, pool, rest: plan.rest, width }, rounds);
    rounds = FEW_ROUNDS;
    if (!takeLayers(plan, used)) break;
  }
  const numbers = all.flatMap(({ row }, number) => ((demand[row] ?? 0) > 0 ? [number] : []));
  return { ...plan, layers: plan.layers.map((layer) => inAll(numbers, layer)) };
}

/** The same layer with the numbers of all types. */
function inAll(numbers: readonly number[], layer: LayerPattern): LayerPattern {
  const columns = layer.columns.map((column) => ({
    ...column,
    types: column.types.map((type) => numbers[type] as number),
  }));
  return { ...layer, columns };
}

interface Programme {
  types: readonly PieceType[];
  lengths: readonly number[];
  prices: LayerPrices;
  pool: LayerPattern[];
  rest: readonly number[];
  width: number;
}

function* fractions(programme: Programme, mostRounds: number): Generator<void, UsedLayer[]> {
  const { types, lengths, prices, pool, rest } = programme;
  const rows = rest.flatMap((count, row) => (count > 0 ? [row] : []));
  const at = new Map(rows.map((row, k) => [row, k]));
  const listed: LayerPattern[] = [];
  const columnOf = (layer: LayerPattern): PatternColumn => {
    const held = [...piecesByRow(types, layer)];
    return {
      cost: layer.length,
      rows: held.map(([row]) => at.get(row) as number),
      counts: held.map(([, count]) => count),
    };
  };
  const singles = rows.map((row) => withoutUnwanted(types, rest, singleLayer(programme, row)));
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
    const proper = withoutUnwanted(types, rest, layer);
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
        if (best === undefined) return [];
        for (const row of lackedBy(types, rest, best)) lacking.add(row);
        const layer = withoutUnwanted(types, rest, best);
        const reduced = lp.reducedCost(columnOf(layer)) / length;
        return reduced < -BETTER ? [{ layer, reduced }] : [];
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
