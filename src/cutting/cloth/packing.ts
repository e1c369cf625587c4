import type { Decoder } from "./decoder.ts";
import type { StepGrid } from "./grid.ts";
import type { LaidOnBolt } from "./problem.ts";

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

/** Pieces as somebody or an earlier plan has laid them; undefined where one of them, or a bolt, is not there. */
export function packingOfLaid(grid: StepGrid, laid: readonly LaidOnBolt[]): Packing | undefined {
  const { items, bolts, perMm } = grid;
  const placed = new Map(
    laid.flatMap(({ boltId, placements }) => placements.map((one) => [one.pieceId, { boltId, ...one }])),
  );
  const at = new Map(bolts.map(({ bolt }, number) => [bolt.id, number]));
  const ways = items.flatMap(({ piece }) => {
    const way = placed.get(piece.id);
    const bolt = way && at.get(way.boltId);
    return bolt === undefined ? [] : [{ ...(way as NonNullable<typeof way>), bolt }];
  });
  if (ways.length < items.length) return undefined;
  const steps = (mm: number) => Math.round(mm * perMm);
  const isTurned = (item: number) => [90, 270].includes(ways[item]?.turn as number);
  return packed(grid, {
    x: Int32Array.from(ways, ({ xMm }) => steps(xMm)),
    y: Float64Array.from(ways, ({ yMm }) => steps(yMm)),
    bolt: Int16Array.from(ways, ({ bolt }) => bolt),
    w: Int32Array.from(items, ({ w, h }, item) => (isTurned(item) ? h : w)),
    h: Int32Array.from(items, ({ w, h }, item) => (isTurned(item) ? w : h)),
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

/** What the lengths taken of each bolt cost, in the weights of the search. `used`: steps of each bolt, in their order. */
export function packingCost(grid: StepGrid, used: ArrayLike<number>): number {
  return grid.bolts.reduce((sum, { costPerStep }, at) => sum + costPerStep * (used[at] ?? 0), 0);
}
