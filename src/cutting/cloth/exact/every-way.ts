import { ANY_LOT, type GridBolt, type StepGrid } from "../grid.ts";
import { type Packing, packed } from "../packing.ts";
import { LargestAlone } from "./largest-alone.ts";
import { Layers, type OpenLayer } from "./layers.ts";
import { type Measure, type Measures, measuresOf } from "./measures.ts";
import { type Laid, type State, StateQueue } from "./state-queue.ts";

/** So many pieces have their bit in a number; of more there are too many ways. */
const MOST_PIECES = 26;
const MOST_STATES = 1_000_000;
/** Costs nearer than this share are the same. */
const SLIVER = 1e-9;
/** Sums of measures are exact to a part of a step, and costs to such a share. */
const SAME = 1e-3;
const ROUNDING = 1e-12;

/** Whether every way to cut can be looked at: few pieces, in layers of columns. */
export function isSmall({ items, joins }: StepGrid, stages: number | undefined): boolean {
  return items.length <= MOST_PIECES && joins === 0 && (stages === 2 || stages === 3);
}

/** Pieces more from one part of the problem to the next. */
const MORE_PIECES = 2;

/** The problem of the largest pieces alone, of ever more of them, and at last of all. */
export function* largestFirst(grid: StepGrid): Generator<StepGrid> {
  const { items } = grid;
  const bySize = items.toSorted((a, b) => b.w * b.h - a.w * a.h);
  for (let count = Math.ceil(items.length / 2); count < items.length; count += MORE_PIECES) {
    const kept = new Set(bySize.slice(0, count));
    yield { ...grid, items: items.filter((item) => kept.has(item)) };
  }
  yield grid;
}

export interface Found {
  /** Pieces laid since the last pause. */
  nodes: number;
  /** No plan costs less; infinite where none costs less than the best that was known. */
  least: number;
  /** A plan that costs no more, unless a flaw lies in its way. */
  packing?: Packing;
}

/**
 * Every way to cut a few pieces in layers, the most promising first (A* over what is cut, one bolt after the other and
 * one layer after the other): of two ways to have cut the same pieces only the one that ends earlier on the bolt, or
 * costs less, is followed. Pauses after each state with what is known so far.
 *
 * @param beat cost of the best plan known, asked anew each time
 */
export function* everyWay(grid: StepGrid, stages: number, beat: () => number): Generator<Found, Found> {
  const measures = measuresOf(grid);
  for (let step = measures.next(); ; step = measures.next()) {
    if (step.done) return yield* new EveryWay(grid, stages, step.value, beat).run();
    yield { nodes: 0, least: 0 };
  }
}

class EveryWay {
  readonly #grid: StepGrid;
  readonly #layers: Layers;
  readonly #measures: Measures;
  readonly #beat: () => number;
  /** Bolts of one lot after each other, the endless one last. */
  readonly #order: number[];
  readonly #sums: readonly Sums[];
  readonly #groups: readonly number[];
  /** Pieces that may come from each bolt, in their order. */
  readonly #allowed: readonly number[];
  readonly #all: number;
  readonly #commute: boolean;
  /** Where the last bolt is endless and layers on it may change places. */
  readonly #largest: LargestAlone | undefined;
  readonly #queue = new StateQueue();
  /** By bolt and pieces cut: where such ways end and what the bolts before cost. */
  readonly #reached = new Map<number, { y: number; before: number }[]>();
  #states = 0;

  constructor(grid: StepGrid, stages: number, measures: Measures, beat: () => number) {
    const { items, bolts, lotAreas, boundLots, lattice } = grid;
    this.#grid = grid;
    this.#layers = new Layers(grid, stages);
    this.#measures = measures;
    this.#beat = beat;
    const numbers = bolts.map((_, at) => at);
    const isEndless = (at: number) => !Number.isFinite(bolts[at]?.h);
    const lastLot = bolts.find(({ h }) => !Number.isFinite(h))?.lot;
    const lotOf = (at: number) => bolts[at]?.lot ?? 0;
    this.#order = numbers.sort(
      (a, b) =>
        Number(lotOf(a) === lastLot) - Number(lotOf(b) === lastLot) ||
        lotOf(a) - lotOf(b) ||
        Number(isEndless(a)) - Number(isEndless(b)),
    );
    this.#sums = measures.list.map((measure) => ({
      measure,
      sumOf: sumsOf(measure.of),
      cloth: this.#order
        .map((bolt, place) => {
          const { w, h, costPerStep } = bolts[bolt] as GridBolt;
          return { place, h, costPerStep, on: measure.on(w) };
        })
        .sort((a, b) => a.costPerStep / a.on - b.costPerStep / b.on),
    }));
    this.#groups = lotAreas.map((_, group) =>
      items.reduce((bits, item, i) => (item.lotGroup === group ? bits | (1 << i) : bits), 0),
    );
    this.#allowed = this.#order.map((bolt) =>
      this.#groups.reduce((bits, group, at) => {
        const bound = boundLots[at] ?? ANY_LOT;
        return bound === ANY_LOT || bound === lotOf(bolt) ? bits : bits & ~group;
      }, ~0),
    );
    this.#all = items.reduce((bits, _, i) => bits | (1 << i), 0);
    this.#commute = !lattice && bolts.every(({ flaws }) => flaws.length === 0);
    const last = bolts[this.#order.at(-1) as number] as GridBolt;
    const isPlain = !lattice && last.h === Number.POSITIVE_INFINITY && last.flaws.length === 0;
    this.#largest = isPlain ? new LargestAlone(grid, stages, last) : undefined;
  }

  *run(): Generator<Found, Found> {
    this.#push({ cut: 0, at: 0, y: 0, before: 0, least: 0, laid: [] });
    for (let state = this.#queue.pop(); state; state = this.#queue.pop()) {
      const { least } = state;
      if (least >= this.#beat() * (1 - SLIVER)) break;
      if (state.cut === this.#all) return { nodes: 0, least, packing: this.#packing(state) };
      if (!this.#isCurrent(state)) continue;
      const isWhole = this.#expand(state);
      const { nodes } = this.#layers;
      if (!isWhole || this.#states > MOST_STATES) return { nodes, least };
      yield { nodes, least };
    }
    return { nodes: 0, least: Number.POSITIVE_INFINITY };
  }

  /** False where it cannot be said of every layer. */
  #expand(state: State): boolean {
    const { cut, at, y, before } = state;
    const bolt = this.#boltAt(at);
    const isLast = at === this.#order.length - 1;
    if (!isLast && this.#mayLeave(at, cut)) {
      const cost = before + this.#costOf(bolt, y);
      this.#push({ cut, at: at + 1, y: 0, before: cost, least: 0, from: state, laid: [] });
    }
    const task = {
      rest: this.#all & ~cut & (this.#allowed[at] as number),
      y,
      bolt,
      first: isLast && this.#commute,
      useful: (layer: OpenLayer) =>
        this.#least(at, layer.end, before, cut | layer.taken, (measure) => this.#room(measure, y, layer)) <
        this.#beat() * (1 - SLIVER),
      emit: (taken: number, end: number, laid: Laid[]) =>
        this.#push({ cut: cut | taken, at, y: end, before, least: 0, from: state, laid }),
    };
    return this.#layers.each(task);
  }

  #boltAt(at: number): GridBolt {
    return this.#grid.bolts[this.#order[at] as number] as GridBolt;
  }

  #costOf({ costPerStep }: GridBolt, y: number): number {
    return costPerStep * Math.max(0, y - this.#grid.gap);
  }

  /** The pieces of a group come from one lot: where the next bolt is of another, all of them are cut, or none. */
  #mayLeave(at: number, cut: number): boolean {
    if (this.#boltAt(at).lot === this.#boltAt(at + 1).lot) return true;
    return this.#groups.every((group) => (cut & group) === 0 || (cut & group) === group);
  }

  #push(state: State): void {
    const { cut, at, y, before } = state;
    const least = Math.max(state.from?.least ?? 0, this.#least(at, y, before, cut));
    if (least >= this.#beat() * (1 - SLIVER)) return;
    const key = cut * this.#order.length + at;
    const known = this.#reached.get(key) ?? [];
    if (known.some((one) => one.y <= y && one.before <= before)) return;
    this.#reached.set(key, [...known.filter((one) => one.y < y || one.before < before), { y, before }]);
    this.#states++;
    this.#queue.push({ ...state, least });
  }

  #isCurrent({ cut, at, y, before }: State): boolean {
    const known = this.#reached.get(cut * this.#order.length + at) as { y: number; before: number }[];
    return known.some((one) => one.y === y && one.before === before);
  }

  /** How much a layer may still hold beside and below its last column. */
  #room({ on }: Measure, y: number, { end, below, fromLeft, fromRight }: OpenLayer): number {
    const behind = this.#measures.tailY - this.#grid.gap;
    return (below - y) * on(fromRight) + (end - below + behind) * on(fromLeft);
  }

  /**
   * What any plan costs that has come to y on a bolt: what is left, but for what finds room in the open layer, takes so
   * much of the cheapest cloth, by each measure.
   */
  #least(at: number, y: number, before: number, cut: number, room?: (measure: Measure) => number): number {
    const { tailY } = this.#measures;
    const { gap } = this.#grid;
    const spent = before + this.#costOf(this.#boltAt(at), y);
    const left = this.#all & ~cut;
    let most = spent;
    for (const { measure, sumOf, cloth } of this.#sums) {
      let need = sumOf(left) - (room?.(measure) ?? 0);
      let cost = spent;
      for (const { place, on, h, costPerStep } of cloth) {
        if (need <= SAME) break;
        if (place < at || on <= 0) continue;
        const from = place === at ? y : 0;
        const used = Math.min(Math.max(0, h - from + tailY - gap), need / on);
        cost += costPerStep * Math.max(0, used - (from > 0 ? tailY - gap : tailY));
        need -= used * on;
      }
      if (need > SAME) return Number.POSITIVE_INFINITY;
      most = Math.max(most, cost);
    }
    if (this.#largest && room === undefined && at === this.#order.length - 1) {
      const length = y + this.#largest.lengthOf(left);
      most = Math.max(most, before + this.#costOf(this.#boltAt(at), length));
    }
    return most * (1 - ROUNDING);
  }

  #packing(end: State): Packing {
    const { items } = this.#grid;
    const laid = {
      x: new Int32Array(items.length),
      y: new Float64Array(items.length),
      bolt: new Int16Array(items.length),
      w: new Int32Array(items.length),
      h: new Int32Array(items.length),
    };
    for (let state: State | undefined = end; state; state = state.from) {
      for (const { item, x, y, w, h } of state.laid) {
        [laid.x[item], laid.y[item], laid.w[item], laid.h[item]] = [x, y, w, h];
        laid.bolt[item] = this.#order[state.at] as number;
      }
    }
    return packed(this.#grid, laid);
  }
}

/** A measure with what a set of pieces comes to by it, and the cloth, what is cheapest by it first. */
interface Sums {
  measure: Measure;
  sumOf: (set: number) => number;
  cloth: readonly { place: number; on: number; h: number; costPerStep: number }[];
}

const HALF_BITS = MOST_PIECES / 2;

/** The sum over the pieces of a set, from tables for the sets of the first pieces and of the others. */
function sumsOf(of: Float64Array): (set: number) => number {
  const tableOf = (from: number) => {
    const table = new Float64Array(1 << HALF_BITS);
    for (let set = 1; set < table.length; set++) {
      const item = 31 - Math.clz32(set);
      table[set] = (table[set & ~(1 << item)] as number) + (of[from + item] ?? 0);
    }
    return table;
  };
  const [low, high] = [tableOf(0), tableOf(HALF_BITS)];
  const mask = low.length - 1;
  return (set) => (low[set & mask] as number) + (high[set >>> HALF_BITS] as number);
}
