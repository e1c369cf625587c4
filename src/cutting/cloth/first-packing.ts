import { ALL_LAID, type Decoder } from "./decoder.ts";
import type { Grid } from "./grid.ts";
import { type Packing, packingOf } from "./packing.ts";

/** Growth of the length tried, until all items lie on it. */
const GROWTH = 1.02;
/** Choices that all items begin with. */
const FIRST_CHOICES = [0, 1];
const MOST_TRIES = 400;

/**
 * A first plan at once: items by length, by width and by area, laid on ever more cloth. Leaves the decoder with the
 * best order and choices; undefined where none lays all items.
 */
export function firstPacking(
  grid: Grid,
  decoder: Decoder,
  sequence: readonly number[],
  leastCost: number,
): { packing: Packing | undefined; tried: number } {
  const { masks, bits } = decoder;
  const items = Array.from(masks.w.keys());
  const w = (item: number) => masks.w[item] ?? 0;
  const h = (item: number) => masks.h[item] ?? 0;
  const orders = [
    items.toSorted((a, b) => h(b) - h(a) || w(b) - w(a)),
    items.toSorted((a, b) => w(b) - w(a) || h(b) - h(a)),
    items.toSorted((a, b) => w(b) * h(b) - w(a) * h(a)),
  ];
  let best: Packing | undefined;
  let bestStart = { order: orders[0] ?? [], bit: 0 };
  let tried = 0;
  for (const order of orders) {
    masks.setOrder(order);
    for (const bit of FIRST_CHOICES) {
      bits.fill(bit);
      const { packing, tries } = growUntilLaid(grid, decoder, sequence, leastCost, best);
      tried += tries;
      if (packing) [best, bestStart] = [packing, { order, bit }];
    }
  }
  masks.setOrder(bestStart.order);
  bits.fill(bestStart.bit);
  return { packing: best, tried };
}

/** A plan that is cheaper than the one to beat. */
function growUntilLaid(
  grid: Grid,
  decoder: Decoder,
  sequence: readonly number[],
  leastCost: number,
  beat: Packing | undefined,
): { packing: Packing | undefined; tries: number } {
  const lengths = grid.bolts.map(({ h }) => h - grid.gap);
  const endless = sequence.find((at) => !Number.isFinite(lengths[at] ?? 0));
  let tries = 0;
  if (endless === undefined) {
    decoder.setLengths(lengths);
    const laid = decoder.lay(Number.POSITIVE_INFINITY) === ALL_LAID;
    const packing = laid ? packingOf(grid, decoder) : undefined;
    return { packing: packing && packing.cost < (beat?.cost ?? Infinity) ? packing : undefined, tries: 1 };
  }
  const perStep = grid.bolts[endless]?.costPerStep ?? 0;
  let length = startLength(grid, decoder, endless, leastCost);
  while (tries < MOST_TRIES) {
    lengths[endless] = length;
    decoder.setLengths(lengths);
    tries++;
    if (decoder.lay(Number.POSITIVE_INFINITY) === ALL_LAID) {
      const packing = packingOf(grid, decoder);
      return { packing: packing.cost < (beat?.cost ?? Infinity) ? packing : undefined, tries };
    }
    if (grid.bolts.length === 1 && beat && length * perStep > beat.cost) break;
    length = Math.ceil((length * GROWTH) / grid.stepY) * grid.stepY + grid.stepY;
  }
  return { packing: undefined, tries };
}

/** No less than the bound asks for, and than what the finite bolts leave of the area. */
function startLength(grid: Grid, decoder: Decoder, endless: number, leastCost: number): number {
  const bolt = grid.bolts[endless];
  if (!bolt) return 0;
  const tallest = decoder.masks.h.reduce((most, h) => Math.max(most, h), 0);
  if (grid.bolts.length > 1 || bolt.costPerStep <= 0) return tallest;
  return Math.max(tallest, Math.ceil(leastCost / bolt.costPerStep / grid.stepY) * grid.stepY);
}
