import type { WholeProgramme } from "../whole-programme.ts";
import { type PatternBar, TO_MEASURE } from "./bar-pattern.ts";
import type { WholeLengths } from "./whole-lengths.ts";

/** A step along a length: a cut of a type, free cells, a whole length of stock back to its start, or a cut to measure. */
type Arc =
  | { kind: "cut"; type: number; from: number; to: number }
  | { kind: "free"; from: number; to: number }
  | { kind: "stock"; stock: number; from: number; to: number }
  | { kind: "measure"; type: number };

export interface ArcFlow {
  arcs: Arc[];
  programme: WholeProgramme;
}

/**
 * Cutting stock as flow from place to place along a length (Valério de Carvalho, Annals of Operations Research 86,
 * 1999, 629–659): its fractions are those of the patterns, its whole flows are the plans. Undefined where it would
 * take more than `mostArcs`.
 */
export function arcFlow(whole: WholeLengths, mostArcs: number): ArcFlow | undefined {
  const cuts = cutArcs(whole, mostArcs);
  if (cuts === undefined) return undefined;
  const places = new Set([0]);
  for (const { from, to } of cuts) places.add(from).add(to);
  for (const { size } of whole.stock) places.add(size);
  const sorted = [...places].sort((a, b) => a - b);
  const arcs: Arc[] = [...cuts];
  for (let k = 1; k + 1 < sorted.length; k++) {
    arcs.push({ kind: "free", from: sorted[k] as number, to: sorted[k + 1] as number });
  }
  whole.stock.forEach(({ size }, stock) => {
    arcs.push({ kind: "stock", stock, from: size, to: 0 });
  });
  if (whole.toMeasure) whole.sizes.forEach((_, type) => void arcs.push({ kind: "measure", type }));
  if (arcs.length > mostArcs) return undefined;
  return { arcs, programme: programmeOf(whole, arcs, sorted) };
}

/** Longer cuts come before shorter ones on a length, so that each set of cuts has one path. */
function cutArcs(
  { sizes, demand, stock }: WholeLengths,
  mostArcs: number,
): (Arc & { kind: "cut" })[] | undefined {
  const longest = stock.reduce((most, { size }) => Math.max(most, size), 0);
  const reached = new Set([0]);
  const arcs: (Arc & { kind: "cut" })[] = [];
  for (let type = 0; type < sizes.length; type++) {
    const size = sizes[type] as number;
    const begun = new Set<number>();
    let front = [...reached];
    for (let n = 0; n < (demand[type] as number); n++) {
      const next: number[] = [];
      for (const from of front) {
        const to = from + size;
        if (to > longest || begun.has(from)) continue;
        begun.add(from);
        arcs.push({ kind: "cut", type, from, to });
        reached.add(to);
        next.push(to);
        if (arcs.length > mostArcs) return undefined;
      }
      front = next;
    }
  }
  return arcs;
}

function programmeOf(whole: WholeLengths, arcs: readonly Arc[], places: readonly number[]): WholeProgramme {
  const { sizes, demand } = whole;
  const rowOf = new Map(places.map((place, row) => [place, row]));
  const programme: WholeProgramme = {
    cost: [],
    upper: [],
    rowLower: places.map(() => 0).concat(demand),
    rowUpper: places.map(() => 0).concat(sizes.map(() => Number.POSITIVE_INFINITY)),
    starts: [0],
    rows: [],
    values: [],
  };
  const cuts = demand.reduce((sum, count) => sum + count, 0);
  for (const arc of arcs) {
    if ("from" in arc && arc.from !== arc.to) {
      programme.rows.push(rowOf.get(arc.from) as number, rowOf.get(arc.to) as number);
      programme.values.push(-1, 1);
    }
    if (arc.kind === "cut" || arc.kind === "measure") {
      programme.rows.push(places.length + arc.type);
      programme.values.push(1);
    }
    programme.starts.push(programme.rows.length);
    programme.cost.push(costOfArc(whole, arc));
    programme.upper.push(mostOfArc(whole, arc, cuts));
  }
  return programme;
}

/** No more lengths are cut up than there are cuts. */
function mostOfArc({ demand, stock }: WholeLengths, arc: Arc, cuts: number): number {
  if (arc.kind === "free") return cuts;
  if (arc.kind === "stock") return Math.min(stock[arc.stock]?.available as number, cuts);
  return demand[arc.type] as number;
}

function costOfArc({ stock, toMeasure }: WholeLengths, arc: Arc): number {
  if (arc.kind === "stock") return stock[arc.stock]?.cost as number;
  return arc.kind === "measure" ? (toMeasure?.[arc.type] as number) : 0;
}

/** Takes a whole flow apart into bars; what is cut beyond the demand is left off. */
export function barsOfFlow(
  { demand }: WholeLengths,
  { arcs }: ArcFlow,
  flow: ArrayLike<number>,
): PatternBar[] {
  const left = [...demand];
  const amount = Array.from({ length: arcs.length }, (_, j) => Math.round(flow[j] as number));
  const out = new Map<number, number[]>();
  arcs.forEach((arc, j) => {
    if (arc.kind === "measure" || amount[j] === 0) return;
    const list = out.get(arc.from);
    if (list) list.push(j);
    else out.set(arc.from, [j]);
  });
  const bars: PatternBar[] = [];
  const want = (type: number): boolean => {
    if ((left[type] as number) === 0) return false;
    left[type] = (left[type] as number) - 1;
    return true;
  };
  for (;;) {
    const bar = followOne(arcs, amount, out, want);
    if (bar === undefined) break;
    if (bar.types.length > 0) bars.push(bar);
  }
  arcs.forEach((arc, j) => {
    if (arc.kind !== "measure") return;
    for (let n = amount[j] as number; n > 0; n--) {
      if (want(arc.type)) bars.push({ stock: TO_MEASURE, types: [arc.type] });
    }
  });
  return bars;
}

/** One length from its start back to its start. */
function followOne(
  arcs: readonly Arc[],
  amount: number[],
  out: ReadonlyMap<number, number[]>,
  want: (type: number) => boolean,
): PatternBar | undefined {
  const types: number[] = [];
  let place = 0;
  for (;;) {
    const j = out.get(place)?.find((one) => (amount[one] as number) > 0);
    const arc = j === undefined ? undefined : arcs[j];
    if (j === undefined || arc === undefined || arc.kind === "measure") return undefined;
    amount[j] = (amount[j] as number) - 1;
    if (arc.kind === "stock") return { stock: arc.stock, types };
    if (arc.kind === "cut" && want(arc.type)) types.push(arc.type);
    place = arc.to;
  }
}
