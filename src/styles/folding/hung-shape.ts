import { type FoldCloth, type FoldSpan, foldsAtHeight, type LaidFold } from "../../mechanics/index.ts";
import type { Grid, ShadePoint } from "../../shade-plan/index.ts";
import {
  type FoldEnds,
  type FoldState,
  limpFoldState,
  limpShape,
  type RaisedShape,
  type StandingShape,
} from "./raised-shape.ts";

/**
 * The shape with folds that hang as their cloth bends, leans and is pressed (`foldsAtHeight`). What the solver does not
 * find stays limp cloth, all of it, so that no fold passes through another. `under` is a soft fold that hangs below the
 * lowest row at every height, as a hobbled shade has.
 */
export function hungShape(
  shape: StandingShape,
  grid: Grid,
  cloth: FoldCloth | undefined,
  under?: FoldState,
): RaisedShape {
  const laid =
    cloth === undefined ? undefined : foldsAtHeight(cloth, shape.folds.map(placeOf), under && placeOf(under));
  if (laid === undefined) return under === undefined ? limpShape(shape) : over(limpShape(shape), under);
  const below = under === undefined || laid.under === undefined ? [] : [hungFold(under, laid.under)];
  const standing = shape.folds.map((fold, i) => {
    const found = laid.folds[i];
    const { behindMm: _, depthMm: __, ...ends } = fold;
    return found === undefined ? limpFoldState(fold) : hungFold(ends, found);
  });
  const folds = [...below, ...standing];
  return {
    ...shape,
    folds,
    bottomYMm: Math.max(shape.hemYMm, ...folds.map((fold) => fold.bottomYMm)),
    outMm: Math.max(0, ...folds.map((fold) => fold.outMm)),
    hung: true,
    ...(under === undefined ? { hemEnd: hemEnd(shape, grid.bottomSectionMm, laid.skirtRad) } : {}),
  };
}

function placeOf({ arcMm, upperYMm, lowerYMm }: FoldEnds): FoldSpan {
  return { arcMm, gapMm: Math.max(0, lowerYMm - upperYMm) };
}

function over(shape: RaisedShape, under: FoldState): RaisedShape {
  return {
    ...shape,
    folds: [under, ...shape.folds],
    bottomYMm: Math.max(shape.bottomYMm, under.bottomYMm),
    outMm: Math.max(shape.outMm, under.outMm),
  };
}

/** Swung back the hem hangs a little higher, by a hundredth of what hangs below the row: `hemYMm` stays as the plan says. */
function hemEnd({ rows, hemYMm }: StandingShape, lengthMm: number, skirtRad: number): ShadePoint {
  const rowYMm = rows[0]?.yMm ?? hemYMm - lengthMm;
  return [lengthMm * Math.sin(skirtRad), rowYMm + lengthMm * Math.cos(skirtRad)];
}

function hungFold(ends: FoldEnds, laid: LaidFold): FoldState {
  return {
    ...ends,
    outline: laid.outline.map(([out, down]): ShadePoint => [out, ends.upperYMm + down]),
    bottomYMm: ends.upperYMm + laid.bottomMm,
    outMm: laid.outMm,
  };
}
