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
  const ways = items.map(({ piece }) => placed.get(piece.id));
  if (ways.some((way) => way === undefined || !at.has(way.boltId))) return undefined;
  const steps = (mm = 0) => Math.round(mm * perMm);
  const isTurned = (turn = 0) => turn === 90 || turn === 270;
  return packed(grid, {
    x: Int32Array.from(ways, (way) => steps(way?.xMm)),
    y: Float64Array.from(ways, (way) => steps(way?.yMm)),
    bolt: Int16Array.from(ways, (way) => at.get(way?.boltId ?? "") ?? -1),
    w: Int32Array.from(items, ({ w, h }, item) => (isTurned(ways[item]?.turn) ? h : w)),
    h: Int32Array.from(items, ({ w, h }, item) => (isTurned(ways[item]?.turn) ? w : h)),
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
