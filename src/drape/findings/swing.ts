import { catenaryOfArc } from "../../mechanics/index.ts";
import type { Form, Grid } from "../../shade-plan/index.ts";
import { clothAcross } from "../cell/cell.ts";

/** Columns that hang on cords, and the cloth that hangs between them. */
export interface Hung {
  columnsMm: readonly number[];
  /** Cloth across each bay, mm: one fewer than columns. */
  arcsMm: readonly number[];
  /** From the eyes straight down to the rings, mm. */
  belowEyesMm: number;
}

const MOST_ROUNDS = 200;
const HALVINGS = 34;
const STILL_MM = 0.05;
/** Two columns come no nearer than this, mm. */
const LEAST_BAY_MM = 1;

/**
 * Where columns come to hang that are free to swing on their cords, mm. Each bay is a chain as long as its cloth: half its
 * weight on either column, and pulling at both by that over the slope of its end. Column by column, each between its
 * neighbours where the lean of its cord bears what the two bays do not take from each other; what they weigh on each mm
 * drops out. Limp cloth, no friction: cloth with any stiffness comes in by less.
 */
export function swungMm({ columnsMm, arcsMm, belowEyesMm }: Hung): number[] {
  const placesMm = [...columnsMm];
  for (let round = 0; round < MOST_ROUNDS; round++) {
    let moved = 0;
    placesMm.forEach((wasMm, i) => {
      const nowMm = restsAt(i);
      placesMm[i] = nowMm;
      moved = Math.max(moved, Math.abs(nowMm - wasMm));
    });
    if (moved < STILL_MM) break;
  }
  return placesMm;

  /** Of one column, the others held: what pulls it to the left grows the farther right it hangs. */
  function restsAt(i: number): number {
    const [left, right] = [placesMm[i - 1], placesMm[i + 1]];
    const [arcLeft, arcRight] = [arcsMm[i - 1] ?? 0, arcsMm[i] ?? 0];
    const bearsMm = (arcLeft + arcRight) / 2;
    const ownMm = columnsMm[i] as number;
    let [from, to] = [ownMm - belowEyesMm, ownMm + belowEyesMm];
    if (left !== undefined) [from, to] = [Math.max(from, left + LEAST_BAY_MM), Math.min(to, left + arcLeft)];
    if (right !== undefined)
      [from, to] = [Math.max(from, right - arcRight), Math.min(to, right - LEAST_BAY_MM)];
    for (let k = 0; k < HALVINGS; k++) {
      const middle = (from + to) / 2;
      const leftwards = left === undefined ? 0 : pullMm(middle - left, arcLeft);
      const rightwards = right === undefined ? 0 : pullMm(right - middle, arcRight);
      if ((bearsMm * (middle - ownMm)) / belowEyesMm + leftwards - rightwards > 0) to = middle;
      else from = middle;
    }
    return (from + to) / 2;
  }
}

/** Level pull of a bay at its ends, as the length of its cloth that weighs so much. */
function pullMm(spanMm: number, arcMm: number): number {
  const hangs = catenaryOfArc(spanMm, arcMm);
  return hangs.kind === "hangs" ? arcMm / 2 / Math.tan(hangs.value.endRad) : Number.POSITIVE_INFINITY;
}

/**
 * How far the outer columns can swing in at a height of the lowest rings, the farther of the two, mm: nothing where a bar or
 * rod keeps the columns apart, or where the cloth is no wider than its place.
 */
export function swingsInMm(form: Form, grid: Grid, lowestRingsYMm: number): number {
  const columnsMm = grid.columns.map(({ xMm }) => xMm);
  const [first, last] = [columnsMm[0] ?? 0, columnsMm.at(-1) ?? 0];
  if (columnsMm.length < 2 || form.bar !== undefined || lowestRingsYMm <= 0) return 0;
  const atMm = form.stretches[0]?.clothMm ?? 0;
  const arcsMm = columnsMm.slice(1).map((toMm, i) => clothAcross(form, columnsMm[i] as number, toMm, atMm));
  if (arcsMm.some((arcMm, i) => arcMm - ((columnsMm[i + 1] as number) - (columnsMm[i] as number)) < 1e-3))
    return 0;
  const placesMm = swungMm({ columnsMm, arcsMm, belowEyesMm: lowestRingsYMm });
  return Math.max((placesMm[0] as number) - first, last - (placesMm.at(-1) as number));
}
