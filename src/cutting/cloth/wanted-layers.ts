import type { LayerPattern, PieceType } from "./layer-prices.ts";

/** Layers so nearly whole are cut without solving anew between them. */
const NEARLY_WHOLE = 0.75;

/** Layers, how often each is cut, and what no layer holds. */
export interface LayerPlan {
  layers: LayerPattern[];
  types: readonly PieceType[];
  rest: number[];
}

/** A layer, and how often it is cut: mostly a fraction. */
export interface UsedLayer {
  layer: LayerPattern;
  amount: number;
}

/** How much a layer holds of each row of the demand. */
export function piecesByRow(types: readonly PieceType[], layer: LayerPattern): Map<number, number> {
  const counts = new Map<number, number>();
  for (const { types: stack } of layer.columns) {
    for (const type of stack) {
      const row = types[type]?.row ?? -1;
      counts.set(row, (counts.get(row) ?? 0) + 1);
    }
  }
  return counts;
}

/** Rows of which a layer holds more than is left. */
export function lackedBy(
  types: readonly PieceType[],
  rest: readonly number[],
  layer: LayerPattern,
): number[] {
  return [...piecesByRow(types, layer)]
    .filter(([row, count]) => count > (rest[row] ?? 0))
    .map(([row]) => row);
}

/** A layer without the pieces that are no longer wanted. */
export function withoutUnwanted(
  types: readonly PieceType[],
  rest: readonly number[],
  layer: LayerPattern,
): LayerPattern {
  const left = new Map<number, number>();
  let whole = true;
  const columns = layer.columns.map((column) => {
    const kept = column.types.filter((type) => {
      const row = types[type]?.row ?? -1;
      const count = left.get(row) ?? rest[row] ?? 0;
      left.set(row, count - 1);
      return count > 0;
    });
    whole &&= kept.length === column.types.length;
    return { ...column, types: kept };
  });
  if (whole) return layer;
  const filled = columns.filter((column) => column.types.length > 0);
  const tallest = filled.reduce(
    (most, column) =>
      Math.max(
        most,
        column.types.reduce((sum, type) => sum + (types[type]?.h ?? 0), 0),
      ),
    0,
  );
  return { length: tallest, columns: filled };
}

/** Takes all whole layers, or the fullest one where there are none; false where nothing was taken. */
export function takeLayers(plan: LayerPlan, used: readonly UsedLayer[]): boolean {
  let taken = 0;
  const take = (layer: LayerPattern): void => {
    plan.layers.push(layer);
    taken++;
    for (const [row, count] of piecesByRow(plan.types, layer)) {
      plan.rest[row] = (plan.rest[row] as number) - count;
    }
  };
  const sorted = used.toSorted((a, b) => b.amount - a.amount);
  for (const { layer, amount } of sorted) {
    for (let n = 1; n <= amount + 1e-6 && isFull(plan, layer); n++) take(layer);
  }
  if (taken > 0) return true;
  // Nearly whole ones together: to solve anew for each would take too long.
  for (const { layer, amount } of sorted) {
    if (amount >= NEARLY_WHOLE && isFull(plan, layer)) take(layer);
  }
  const first = sorted.find(({ layer }) => isFull(plan, layer));
  if (taken === 0 && first) take(first.layer);
  return taken > 0;
}

/** Whether all that the layer holds is still wanted. */
function isFull({ types, rest }: LayerPlan, layer: LayerPattern): boolean {
  return lackedBy(types, rest, layer).length === 0;
}
