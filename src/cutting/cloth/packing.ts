import type { Decoder } from "./decoder.ts";
import type { StepGrid } from "./grid.ts";

/** Every item on a bolt, in steps of the grid. */
export interface Packing {
  x: Int32Array;
  y: Float64Array;
  bolt: Int16Array;
  /** As they lie, the gap among them. */
  w: Int32Array;
  h: Int32Array;
  /** Length cut from each bolt, in steps. */
  used: Float64Array;
  cost: number;
}

/** What a decoder has just laid; items not laid are on bolt −1. */
export function packingOf(grid: StepGrid, decoder: Decoder): Packing {
  const { masks } = decoder;
  return packed(grid, {
    x: decoder.x.slice(),
    y: decoder.y.slice(),
    bolt: decoder.bolt.slice(),
    w: masks.w.slice(),
    h: masks.h.slice(),
  });
}

export function packed(grid: StepGrid, laid: Omit<Packing, "used" | "cost">): Packing {
  const used = new Float64Array(grid.bolts.length);
  laid.bolt.forEach((at, item) => {
    if (at < 0) return;
    used[at] = Math.max(used[at] ?? 0, (laid.y[item] ?? 0) + (laid.h[item] ?? 0) - grid.gap);
  });
  return { ...laid, used, cost: packingCost(grid, used) };
}

export function packingCost(grid: StepGrid, used: ArrayLike<number>): number {
  return grid.bolts.reduce((sum, { costPerStep }, at) => sum + costPerStep * (used[at] ?? 0), 0);
}
