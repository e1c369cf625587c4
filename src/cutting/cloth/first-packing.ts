import { ALL_LAID, type Decoder } from "./decoder.ts";
import { firstLots } from "./first-lots.ts";
import type { StepGrid } from "./grid.ts";
import { type Packing, packingOf } from "./packing.ts";

/** Growth of the length tried, until all items lie on it; many items take long to lay, and it grows faster each time. */
const GROWTH = 1.02;
const GROWTH_OF_MANY = 1.06;
const FASTER = 1.5;
const MANY = 500;
/** Choices that all items begin with; on a repeat those that lose least to reach their place go before. */
const FIRST_CHOICES = [0, 1];
const FIRST_ON_REPEAT = [4, 5, 0, 1];
const MOST_TRIES = 400;

/**
 * A first plan at once: items by length, by width and by area, laid on ever more cloth. Leaves the decoder with the
 * best order and choices; undefined where none lays all items. Pauses after each plan tried with the best so far.
 */
export function* firstPacking(
  grid: StepGrid,
  decoder: Decoder,
  leastCost: number,
): Generator<Packing | undefined, Packing | undefined> {
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
  const allLots = firstLots(grid, decoder.lotChoices);
  let bestStart = { order: orders[0] as number[], bit: 0, lots: allLots[0] as readonly number[] };
  for (const lots of allLots) {
    decoder.chosenLots.set(lots);
    for (const order of orders) {
      masks.setOrder(order);
      for (const bit of decoder.choices > 4 ? FIRST_ON_REPEAT : FIRST_CHOICES) {
        bits.fill(bit);
        const packing = yield* growUntilLaid(grid, decoder, leastCost, best);
        if (packing) [best, bestStart] = [packing, { order, bit, lots }];
      }
    }
  }
  decoder.chosenLots.set(bestStart.lots);
  masks.setOrder(bestStart.order);
  bits.fill(bestStart.bit);
  return best;
}

/** A plan that is cheaper than the one to beat. */
function* growUntilLaid(
  grid: StepGrid,
  decoder: Decoder,
  leastCost: number,
  beat: Packing | undefined,
): Generator<Packing | undefined, Packing | undefined> {
  const lengths = grid.bolts.map(({ h }) => h - grid.gap);
  const endless = grid.bolts.findIndex(({ h }) => !Number.isFinite(h));
  const lay = () => {
    decoder.setLengths(lengths);
    return decoder.lay(Number.POSITIVE_INFINITY) === ALL_LAID ? packingOf(grid, decoder) : undefined;
  };
  const ifCheaper = (packing: Packing | undefined) =>
    packing && packing.cost < (beat?.cost ?? Number.POSITIVE_INFINITY) ? packing : undefined;
  if (endless < 0) {
    const packing = ifCheaper(lay());
    yield packing ?? beat;
    return packing;
  }
  const perStep = grid.bolts[endless]?.costPerStep ?? 0;
  const many = decoder.masks.count >= MANY;
  let growth = many ? GROWTH_OF_MANY : GROWTH;
  let length = startLength(grid, decoder, endless, leastCost);
  for (let tries = 0; tries < MOST_TRIES; tries++) {
    lengths[endless] = length;
    const packing = lay();
    const better = ifCheaper(packing);
    yield better ?? beat;
    if (packing) return better;
    if (isStuck(grid, decoder, endless)) break;
    if (grid.bolts.length === 1 && beat && length * perStep > beat.cost) break;
    length = Math.ceil((length * growth) / grid.stepY) * grid.stepY + grid.stepY;
    if (many) growth = 1 + FASTER * (growth - 1);
  }
  return undefined;
}

/** Whether an item that found no place must come from a lot that does not grow. */
function isStuck({ items, bolts }: StepGrid, { bolt, chosenLots }: Decoder, endless: number): boolean {
  const growing = bolts[endless]?.lot;
  return items.some(({ lotGroup }, item) => {
    const lot = lotGroup < 0 ? -1 : (chosenLots[lotGroup] as number);
    return (bolt[item] ?? 0) < 0 && lot >= 0 && lot !== growing;
  });
}

/** No less than the bound asks for, and than what the finite bolts leave of the area. */
function startLength(grid: StepGrid, decoder: Decoder, endless: number, leastCost: number): number {
  const bolt = grid.bolts[endless];
  if (!bolt) return 0;
  const { masks } = decoder;
  const tallest = masks.h.reduce((most, h) => Math.max(most, h), 0);
  const held = grid.bolts.reduce((sum, { w, h }) => sum + (Number.isFinite(h) ? w * h : 0), 0);
  const alone = grid.bolts.length === 1 && bolt.costPerStep > 0;
  const least = alone ? leastCost / bolt.costPerStep : (masks.area - held) / bolt.w;
  return Math.max(tallest, Math.ceil(least / grid.stepY) * grid.stepY);
}
