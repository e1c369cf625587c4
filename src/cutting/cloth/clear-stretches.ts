import type { GridBolt } from "./grid.ts";

/** Part of the width of a bolt, in steps. */
export interface ClearStretch {
  from: number;
  to: number;
}

type Flaws = GridBolt["flaws"];

/** Where a clear stretch can begin beside the flaws from y on, as far as `reach`: at the selvedge, and right of each. */
export function stretchStarts(flaws: Flaws, y: number, reach: number): number[] {
  const starts = [0];
  for (const { x2, y1, y2 } of flaws) if (y2 > y && y1 < reach) starts.push(x2);
  return starts.sort((a, b) => a - b);
}

/** Stretches across the bolt that no flaw touches over the length of a layer; the gap is theirs already. */
export function clearStretches(
  flaws: Flaws,
  y: number,
  layer: number,
  width: number,
  gap: number,
): ClearStretch[] {
  const hit = flaws.filter(({ y1, y2 }) => y2 > y && y1 < y + layer - gap).sort((a, b) => a.x1 - b.x1);
  const stretches: ClearStretch[] = [];
  let from = 0;
  for (const { x1, x2 } of hit) {
    if (x1 > from) stretches.push({ from, to: x1 + gap });
    from = Math.max(from, x2);
  }
  if (from < width) stretches.push({ from, to: width });
  return stretches;
}
