import type { Form, ShadePoint } from "../../shade-plan/index.ts";
import { foldOutline } from "../folding/fold-outline.ts";
import { type FoldState, freeReachMm, type RaisedShape } from "../folding/raised-shape.ts";

/** Folds of the pouf that stays, at a column: loops that hang from the lowest row. */
export function poufFolds({ pouf }: Form, rowYMm: number): FoldState[] {
  if (pouf === undefined || pouf.loops < 1) return [];
  const arcMm = pouf.clothMm / pouf.loops;
  const outMm = freeReachMm(arcMm);
  return Array.from({ length: pouf.loops }, (_, i) => {
    const reach = { outerMm: (outMm * (i + 1)) / pouf.loops, innerMm: (0.4 * outMm * (i + 1)) / pouf.loops };
    const outline = foldOutline(arcMm, 0, reach).map(([out, down]): ShadePoint => [out, rowYMm + down]);
    return {
      row: 0,
      upperYMm: rowYMm,
      lowerYMm: rowYMm,
      arcMm,
      outline,
      bottomYMm: Math.max(...outline.map(([, y]) => y)),
      outMm: Math.max(...outline.map(([out]) => out)),
      state: "partial",
    };
  });
}

/** Where the lines across hang midway between two columns, mm below the top line. */
export interface MiddleLevels {
  /** Upper and lower row of each fold, in the order of the folds. */
  folds: { upperYMm: number; lowerYMm: number }[];
  hemYMm: number;
}

/** The cloth midway between two columns, from the top line to the hem: the same folds, hung lower. */
export function middleSection(
  { folds }: RaisedShape,
  { pouf }: Form,
  rowYMm: number,
  levels: MiddleLevels,
): ShadePoint[] {
  const points: ShadePoint[] = [[0, 0]];
  for (let i = folds.length - 1; i >= 0; i -= 1) {
    const fold = folds[i];
    const level = levels.folds[i];
    if (fold !== undefined && level !== undefined) points.push(...loop(fold.arcMm, fold.outMm, level));
  }
  if (pouf !== undefined && pouf.loops > 0) {
    const sunk = { upperYMm: rowYMm, lowerYMm: levels.folds[0]?.lowerYMm ?? rowYMm };
    points.push(...loop(pouf.clothMm, freeReachMm(pouf.clothMm), sunk));
  }
  points.push([0, levels.hemYMm]);
  return points;
}

function loop(arcMm: number, outMm: number, { upperYMm, lowerYMm }: { upperYMm: number; lowerYMm: number }) {
  const gapMm = Math.max(0, lowerYMm - upperYMm);
  if (arcMm - gapMm < 1e-6 || outMm <= 0)
    return [
      [0, upperYMm],
      [0, upperYMm + gapMm],
    ] satisfies ShadePoint[];
  return foldOutline(arcMm, gapMm, { outerMm: outMm, innerMm: 0.6 * outMm }).map(
    ([out, down]): ShadePoint => [out, upperYMm + down],
  );
}
