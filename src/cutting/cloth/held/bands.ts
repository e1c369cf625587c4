import { apart, type CutBlock } from "../cut-tree.ts";

/** Steps of the grid, the gap behind a piece within it. */
export interface Area {
  x1: number;
  x2: number;
  y1: number;
  y2: number;
}

/** Cloth between two cuts right across a bolt that holds pieces which stay, and what is free beside them. */
export interface HeldBand {
  y1: number;
  y2: number;
  free: FreeArea[];
}

/** Cloth that is free in a band. `columns`: it may still be cut along into columns side by side. */
export interface FreeArea extends Area {
  columns: boolean;
}

/**
 * Blocks in runs that no cut right across the bolt goes through: where each run begins and ends, in the order along
 * the bolt.
 */
export function runsAcross(blocks: readonly CutBlock[]): (CutBlock & { blocks: CutBlock[] })[] {
  return apart(blocks, "across").map((run) => ({ ...hull(run), blocks: run }));
}

/** A band from y1 to y2 of a bolt so wide: strips beside its blocks, and what is free before and behind each. */
export function bandOf(blocks: readonly CutBlock[], width: number, y1: number, y2: number): HeldBand {
  const free: FreeArea[] = [];
  let x = 0;
  const beside = (x1: number, x2: number) => {
    if (x2 > x1) free.push({ x1, x2, y1, y2, columns: true });
  };
  const within = ({ x1, x2 }: CutBlock, from: number, to: number) => {
    if (to > from) free.push({ x1, x2, y1: from, y2: to, columns: false });
  };
  for (const column of apart(blocks, "along")) {
    const span = hull(column);
    beside(x, span.x1);
    let y = y1;
    for (const run of apart(column, "across")) {
      const part = hull(run);
      within(span, y, part.y1);
      y = part.y2;
    }
    within(span, y, y2);
    x = span.x2;
  }
  beside(x, width);
  return { y1, y2, free };
}

function hull(blocks: readonly CutBlock[]): CutBlock {
  return blocks.reduce(
    (all, one) => ({
      x1: Math.min(all.x1, one.x1),
      x2: Math.max(all.x2, one.x2),
      y1: Math.min(all.y1, one.y1),
      y2: Math.max(all.y2, one.y2),
    }),
    {
      x1: Number.POSITIVE_INFINITY,
      x2: Number.NEGATIVE_INFINITY,
      y1: Number.POSITIVE_INFINITY,
      y2: Number.NEGATIVE_INFINITY,
    },
  );
}
