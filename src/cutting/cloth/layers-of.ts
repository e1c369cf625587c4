import { apart } from "./cut-tree.ts";
import type { GridBolt, StepGrid } from "./grid.ts";
import { type Packing, packed } from "./packing.ts";

/** Items of one bolt between two cuts right across it, in steps. */
export interface PackedLayer {
  items: number[];
  y: number;
  /** The gap below it among it. */
  length: number;
  area: number;
}

export function layersOn(packing: Packing, at: number): PackedLayer[] {
  const blocks = Array.from(packing.bolt.keys())
    .filter((item) => packing.bolt[item] === at)
    .map((item) => {
      const y1 = packing.y[item] ?? 0;
      return { item, x1: 0, x2: 1, y1, y2: y1 + (packing.h[item] ?? 0) };
    });
  return apart(blocks, "across").map((layer) => {
    const y = layer.reduce((least, { y1 }) => Math.min(least, y1), Number.POSITIVE_INFINITY);
    const end = layer.reduce((most, { y2 }) => Math.max(most, y2), 0);
    const items = layer.map(({ item }) => item);
    const area = items.reduce((sum, item) => sum + (packing.w[item] ?? 0) * (packing.h[item] ?? 0), 0);
    return { items, y, length: end - y, area };
  });
}

/** A packing with some layers of a bolt taken out, the rest moved together, and others laid behind them. */
export function withLayers(
  grid: StepGrid,
  packing: Packing,
  kept: readonly PackedLayer[],
  laid: {
    items: readonly number[];
    x: ArrayLike<number>;
    y: ArrayLike<number>;
    w: ArrayLike<number>;
    h: ArrayLike<number>;
  },
): Packing {
  const x = packing.x.slice();
  const y = packing.y.slice();
  const w = packing.w.slice();
  const h = packing.h.slice();
  let top = 0;
  for (const layer of kept) {
    for (const item of layer.items) y[item] = (packing.y[item] ?? 0) - layer.y + top;
    top += layer.length;
  }
  laid.items.forEach((item, k) => {
    x[item] = laid.x[k] ?? 0;
    y[item] = top + (laid.y[k] ?? 0);
    w[item] = laid.w[k] ?? 0;
    h[item] = laid.h[k] ?? 0;
  });
  return packed(grid, { x, y, bolt: packing.bolt.slice(), w, h });
}

/** Some of the items as a problem of their own, on as much of a bolt as they need. */
export function partOf(grid: StepGrid, bolt: GridBolt, items: readonly number[]): StepGrid {
  return {
    ...grid,
    items: items.map((item) => ({
      ...(grid.items[item] as StepGrid["items"][number]),
      lotGroup: -1,
      join: -1,
    })),
    bolts: [{ ...bolt, h: Number.POSITIVE_INFINITY }],
    lotAreas: [],
    boundLots: [],
    joins: 0,
  };
}
