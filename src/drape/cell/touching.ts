import { type Contacts, PANE, SIDE_WALL } from "../../mechanics/index.ts";
import type { CellGrid } from "./cell-grid.ts";

/** Strands behind one that it can touch. */
const NEXT_STRANDS = 5;

/**
 * What every node can touch as the cloth hangs now: on its own upright line the first strand behind it that passes its
 * height, by the order of the folds; behind all of them the pane; and beside it, where the cell is turned over at its left
 * end, its own mirror image there.
 */
export function touching(
  { lines, strands }: CellGrid,
  across: number,
  x: Float64Array,
  {
    thicknessMm,
    paneMm,
    wallMm,
    stiffness,
  }: { thicknessMm: number; paneMm: number; wallMm?: number | undefined; stiffness: number },
): Contacts {
  const nodes: number[] = [];
  const share: number[] = [];
  const gapMm: number[] = [];
  const down = (j: number, i: number) => x[3 * (j * across + i) + 1] as number;
  for (let i = 0; i < across; i++) {
    strands.forEach(({ from, to }, s) => {
      for (let j = from; j <= to; j++) {
        const y = down(j, i);
        for (let k = s + 1; k < Math.min(strands.length, s + 1 + NEXT_STRANDS); k++) {
          const at = crossing(strands[k] as { from: number; to: number }, j, y, (line) => down(line, i));
          if (at === undefined) continue;
          nodes.push(j * across + i, at.line * across + i, (at.line + 1) * across + i);
          share.push(at.share);
          gapMm.push(thicknessMm);
          break;
        }
      }
    });
    for (let j = 0; j < lines.length; j++) {
      nodes.push(j * across + i, PANE, PANE);
      share.push(0);
      gapMm.push(-paneMm);
      if (i === 0 || wallMm === undefined) continue;
      nodes.push(j * across + i, SIDE_WALL, SIDE_WALL);
      share.push(0);
      gapMm.push(wallMm);
    }
  }
  return {
    nodes: Int32Array.from(nodes),
    share: Float64Array.from(share),
    gapMm: Float64Array.from(gapMm),
    stiffness,
    softMm: Math.max(0.4, thicknessMm / 2),
  };
}

/** Where a strand passes a height, not at the very turn that it shares with the strand in front. */
function crossing(
  { from, to }: { from: number; to: number },
  beside: number,
  y: number,
  down: (line: number) => number,
): { line: number; share: number } | undefined {
  for (let line = Math.max(from, beside + 1); line < to; line++) {
    const [a, b] = [down(line), down(line + 1)];
    if ((a - y) * (b - y) > 0 || a === b) continue;
    return { line, share: (y - a) / (b - a) };
  }
  return undefined;
}
