import { anneal } from "./anneal.ts";
import { BoxDecoder } from "./box-decoder.ts";
import type { Decoder } from "./decoder.ts";
import { FitMasks } from "./fit-masks.ts";
import type { StepGrid } from "./grid.ts";
import { LayerDecoder } from "./layer-decoder.ts";
import { type PackedLayer, partOf, withLayers } from "./layers-of.ts";
import type { Packing } from "./packing.ts";

/** Pieces that are laid anew at a time, and layers that they come from. */
const MOST_PIECES = 24;
const MOST_LAYERS = 4;
/** Plans tried for one aim, and the period of the search within. */
const PLANS = 1200;
const PERIOD = 400;
/** Share of what may be saved that is aimed at first, and how often it is halved. */
const FIRST_SHARE = 0.5;
const HALVINGS = 2;

export interface Regrouping {
  grid: StepGrid;
  /** The bolt whose layers are taken, without flaws. */
  at: number;
  stages: number | undefined;
  draw: () => number;
}

/**
 * Takes a few layers out of a plan, the wasteful ones more often, and lays their pieces anew on less cloth. Large jobs,
 * where no change of the whole order shows, gain piece by piece. Gives the new plan, if there is a better one; pauses
 * with the number of plans tried, counted by the share of the pieces that they hold: mostly a fraction.
 *
 * @param layers those of the bolt, as the packing has them
 */
export function* regroup(
  job: Regrouping,
  packing: Packing,
  layers: readonly PackedLayer[],
): Generator<number, Packing | undefined> {
  const { grid, at, draw } = job;
  const width = grid.bolts[at]?.w ?? 0;
  const chosen = choose(layers, width, draw);
  const items = chosen.flatMap((layer) => layer.items);
  if (items.length < 2) {
    yield 1;
    return undefined;
  }
  const decoder = decoderOf(job, packing, items);
  const length = chosen.reduce((sum, layer) => sum + layer.length, 0);
  const area = chosen.reduce((sum, layer) => sum + layer.area, 0);
  const weight = items.length / grid.items.length;
  let found: Packing | undefined;
  let reached = length;
  let share = FIRST_SHARE;
  for (let failures = 0; failures <= HALVINGS; ) {
    const steps = Math.floor((share * (reached - area / width)) / grid.stepY);
    const goal = reached - Math.max(1, steps) * grid.stepY;
    decoder.setLengths([goal - grid.gap]);
    const laid = yield* within(anneal(decoder, draw, PERIOD), weight);
    if (!laid) {
      failures++;
      share /= 2;
      if (steps <= 1) break;
      continue;
    }
    const kept = layers.filter((layer) => !chosen.includes(layer));
    found = withLayers(grid, packing, kept, {
      items,
      x: decoder.x,
      y: decoder.y,
      w: decoder.masks.w,
      h: decoder.masks.h,
    });
    reached = items.reduce((end, _, k) => Math.max(end, (decoder.y[k] ?? 0) + (decoder.masks.h[k] ?? 0)), 0);
    yield weight;
  }
  return found;
}

function* within(search: Generator<number, boolean>, weight: number): Generator<number, boolean> {
  for (let spent = 0; spent < PLANS; ) {
    const step = search.next();
    if (step.done) return step.value;
    spent += step.value;
    yield step.value * weight;
  }
  return false;
}

function choose(layers: readonly PackedLayer[], width: number, draw: () => number): PackedLayer[] {
  const chosen: PackedLayer[] = [];
  let pieces = 0;
  const wasteOf = ({ length, area }: PackedLayer) => length * width - area;
  for (let tries = 0; tries < 2 * MOST_LAYERS && chosen.length < MOST_LAYERS; tries++) {
    // The more wasteful of two drawn.
    const a = layers[Math.floor(draw() * layers.length)];
    const b = layers[Math.floor(draw() * layers.length)];
    const layer = a && b && wasteOf(b) > wasteOf(a) ? b : a;
    if (!layer || chosen.includes(layer)) continue;
    if (chosen.length > 0 && pieces + layer.items.length > MOST_PIECES) continue;
    chosen.push(layer);
    pieces += layer.items.length;
  }
  return chosen;
}

function decoderOf(
  { grid, at, stages, draw }: Regrouping,
  packing: Packing,
  items: readonly number[],
): Decoder {
  const own = items.map((item) => grid.items[item] as StepGrid["items"][number]);
  const masks = new FitMasks(own);
  items.forEach((item, k) => {
    if (packing.w[item] !== masks.w[k] || packing.h[item] !== masks.h[k]) masks.turn(k);
  });
  const h = (k: number) => masks.h[k] ?? 0;
  masks.setOrder(own.map((_, k) => k).sort((a, b) => h(b) - h(a) || (masks.w[b] ?? 0) - (masks.w[a] ?? 0)));
  const bolt = grid.bolts[at] as StepGrid["bolts"][number];
  const whole = stages === undefined && grid.longestLayer === Number.POSITIVE_INFINITY;
  if (whole && draw() < 0.5) return new BoxDecoder(masks, bolt.w, grid.gap);
  const small = partOf(grid, bolt, items);
  return new LayerDecoder(small, masks, [0], stages ?? 6);
}
