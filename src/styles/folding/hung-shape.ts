import { type FoldCloth, type FoldPlace, type LaidFold, layFolds } from "../../mechanics/index.ts";
import type { Grid, ShadePoint } from "../../shade/index.ts";
import type { FoldState, RaisedShape } from "./raised-shape.ts";

/**
 * The same shape with folds that hang as their cloth bends, leans and is pressed (`layFolds`). What the solver does not
 * find stays limp cloth, all of it, so that no fold passes through another. `under` is a soft fold that hangs below the
 * lowest row at every height, as a hobbled shade has.
 */
export function hungShape(
  shape: RaisedShape,
  grid: Grid,
  cloth: FoldCloth | undefined,
  under?: FoldState,
): RaisedShape {
  const whole = under === undefined ? shape : over(shape, under);
  const laid =
    cloth === undefined ? undefined : layFolds(cloth, shape.folds.map(placeOf), under && placeOf(under));
  if (laid === undefined) return whole;
  const below = under === undefined || laid.under === undefined ? [] : [hungFold(under, laid.under)];
  const folds = [...below, ...shape.folds.map((fold, i) => hungFold(fold, laid.folds[i]))];
  return {
    ...shape,
    folds,
    bottomYMm: Math.max(shape.hemYMm, ...folds.map((fold) => fold.bottomYMm)),
    outMm: Math.max(0, ...folds.map((fold) => fold.outMm)),
    hung: true,
    ...(under === undefined ? { hemEnd: hemEnd(shape, grid.bottomSectionMm, laid.apronRad) } : {}),
  };
}

function placeOf({ arcMm, upperYMm, lowerYMm }: FoldState): FoldPlace {
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
function hemEnd({ rows, hemYMm }: RaisedShape, lengthMm: number, apronRad: number): ShadePoint {
  const rowYMm = rows[0]?.yMm ?? hemYMm - lengthMm;
  return [lengthMm * Math.sin(apronRad), rowYMm + lengthMm * Math.cos(apronRad)];
}

function hungFold(fold: FoldState, laid: LaidFold | undefined): FoldState {
  if (laid === undefined) return fold;
  return {
    ...fold,
    outline: laid.outline.map(([out, down]): ShadePoint => [out, fold.upperYMm + down]),
    bottomYMm: fold.upperYMm + laid.bottomMm,
    outMm: laid.outMm,
  };
}
