import type { GridItem } from "./grid.ts";
import type { PieceType } from "./layer-prices.ts";

/**
 * Pieces of one size as one row of a demand, the longest first, with each way to lay them that the cloth is wide enough
 * for.
 */
export function pieceTypes(
  items: readonly GridItem[],
  width: number,
): { types: PieceType[]; demand: number[] } {
  const rowOf = new Map<string, number>();
  const types: PieceType[] = [];
  const demand: number[] = [];
  const stiff = new Set(items.filter(({ turns }) => !turns).map(({ w, h }) => `${w} ${h}`));
  for (const { w, h } of items.toSorted((a, b) => b.h - a.h || b.w - a.w)) {
    // Where some may be turned and equal ones not, none is: that one problem is rare and not worth a row of its own.
    const key = `${w} ${h}`;
    let row = rowOf.get(key);
    if (row === undefined) {
      row = demand.length;
      rowOf.set(key, row);
      demand.push(0);
      if (w <= width) types.push({ w, h, turned: false, row });
      if (!stiff.has(key) && h <= width) types.push({ w: h, h: w, turned: true, row });
    }
    demand[row] = (demand[row] ?? 0) + 1;
  }
  return { types, demand };
}
