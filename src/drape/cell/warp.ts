import type { DrapeCell } from "./cell.ts";
import type { ClothLine } from "./cell-grid.ts";

/** Cloth from the line above to this one, on one upright line: the hem can be cut in a curve. */
export function wholeWarpMm(cell: DrapeCell, lines: readonly ClothLine[], i: number, j: number): number {
  const { stepMm, stretch } = lines[j] as ClothLine;
  const last = lines.at(-1)?.stretch ?? 0;
  if (stretch !== last) return stepMm;
  const hemMm = lines.reduce((sum, line) => sum + (line.stretch === last ? line.stepMm : 0), 0);
  return stepMm * (1 + (cell.longerMm[i] as number) / hemMm);
}

/** The same without what lies in ripples finer than the net. */
export function warpMm(cell: DrapeCell, lines: readonly ClothLine[], i: number, j: number): number {
  const { swag, fromHemMm } = lines[j] as ClothLine;
  const whole = wholeWarpMm(cell, lines, i, j);
  return swag === undefined ? whole : whole * swagShareOf(cell, i, swag, fromHemMm);
}

/**
 * Share of the cloth of a swag that hangs in it on one upright line. Its weft lets a thread go no farther from its tape than
 * r = √(cloth² − distance²), so that a fold there is √(tape² + (2r)²) long at the most; the rest is drawn up into ruffles.
 */
export function swagShareOf(
  cell: DrapeCell,
  line: number,
  { clothMm, tapeMm }: { clothMm: number; tapeMm: number },
  fromHemMm: number,
): number {
  const { xMm, columns } = cell;
  const from = columns[0] as number;
  let weftMm = 0;
  for (let i = Math.min(from, line); i < Math.max(from, line); i++) weftMm += cell.acrossMm(i, fromHemMm);
  const apartMm = Math.abs((xMm[line] as number) - (xMm[from] as number));
  const reachMm = Math.sqrt(Math.max(0, weftMm ** 2 - apartMm ** 2));
  return Math.min(1, Math.hypot(tapeMm, 2 * reachMm) / clothMm);
}
