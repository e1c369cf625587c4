import { type Grid, hemYMm, isLevel, type Size } from "../shade-plan/index.ts";
import type { VisibleShape } from "./visible-shape.ts";

/** A height drawn for half way across, at its place across the shade, mm below the top line. */
export type Slant = (xMm: number, yMm: number) => number;

/** How far a line half way across is moved there, and how much lower its right end lies, mm. */
interface Anchor {
  yMm: number;
  byMm: number;
  fallMm: number;
}

/**
 * Where rows or hem of a shade slant: its shape is drawn for half way across and moved from there, at a row with the row,
 * at the hem with the hem, in between in proportion. Nothing is moved where all of them are level.
 */
export function slantOf(
  { size, grid }: { size: Size; grid: Grid },
  section: VisibleShape["section"],
): Slant | undefined {
  if (isLevel(grid)) return undefined;
  const { finishedWidthMm: widthMm, finishedLengthMm: lengthMm } = size;
  const falls = new Map(grid.rows.map(({ number, ends }) => [number, ends?.fallMm ?? 0]));
  const anchors: Anchor[] = [
    { yMm: 0, byMm: 0, fallMm: 0 },
    ...section.rows.map(({ number, yMm }) => ({ yMm, byMm: 0, fallMm: falls.get(number) ?? 0 })),
    {
      yMm: section.hemYMm,
      byMm: hemYMm(grid, size, widthMm / 2) - lengthMm,
      fallMm: grid.hemFallMm ?? 0,
    },
  ].sort((a, b) => a.yMm - b.yMm);
  return (xMm, yMm) => {
    const above = anchors.findLast((one) => one.yMm <= yMm) ?? anchors[0];
    const below = anchors.find((one) => one.yMm > yMm) ?? above;
    if (above === undefined || below === undefined) return yMm;
    const apart = below.yMm - above.yMm;
    const share = apart > 0 ? (yMm - above.yMm) / apart : 0;
    const between = (a: number, b: number) => a + share * (b - a);
    return (
      yMm + between(above.byMm, below.byMm) + between(above.fallMm, below.fallMm) * (xMm / widthMm - 1 / 2)
    );
  };
}
