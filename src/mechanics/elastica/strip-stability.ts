import { solveTridiagonal } from "../solve/tridiagonal.ts";
import {
  deepestOf,
  depthPast,
  placesOf,
  type StripProblem,
  type StripState,
  springSoftness,
} from "./strip.ts";

/**
 * Would a strip stay as it hangs? The second variation of its energy, ∫ η′² + (V cos θ + H sin θ) η² ds, must be positive
 * for every η that keeps both hinges where they are (Courant & Hilbert, Methods of Mathematical Physics I, ch. IV; from
 * memory). On the nodes it is a tridiagonal matrix K; bordered by the two constraints G and by the springs C of the planes
 * it must have as many negative pivots as borders (Haynsworth, inertia of a partitioned matrix; from memory).
 */
export function isStable(problem: StripProblem, state: StripState): boolean {
  const { slope } = state;
  const n = slope.length - 1;
  const borders = bordersOf(problem, state);
  const matrix = secondVariation(problem, state, borders);
  const columns = borders.map(({ column }) => column.slice());
  const negative = negativePivots(matrix);
  if (!solveTridiagonal(matrix.lower, matrix.diagonal, matrix.upper, columns)) return false;
  const schur = borders.map(({ column, softness }, r) =>
    Float64Array.from(columns, (solved, c) => {
      let sum = r === c ? softness : 0;
      for (let i = 0; i <= n; i++) sum += (column[i] as number) * (solved[i] as number);
      return -sum;
    }),
  );
  return negative + negativeOf(schur) === borders.length;
}

interface Border {
  column: Float64Array;
  softness: number;
}

/** How far the lower hinge and each pressed node move with the turn of each node. */
function bordersOf(problem: StripProblem, { slope, push }: StripState): Border[] {
  const n = slope.length - 1;
  const step = 2 / n;
  const { x, y } = placesOf(slope);
  const until = (last: number, out: number, up: number) =>
    slope.map((angle, i) => {
      const share = i > last ? 0 : i === 0 || i === last ? step / 2 : step;
      return share * (out * Math.cos(angle) + up * Math.sin(angle));
    });
  const borders: Border[] = [
    { column: until(n, 1, 0), softness: 0 },
    { column: until(n, 0, 1), softness: 0 },
  ];
  if (problem.held?.top !== undefined) borders.push({ column: only(n, 0), softness: 0 });
  if (problem.held?.bottom !== undefined) borders.push({ column: only(n, n), softness: 0 });
  for (let i = 1; i < n; i++) {
    if (!((push[i] as number) > 0)) continue;
    const plane = deepestOf(problem, x[i] as number, y[i] as number);
    if (plane === undefined) continue;
    const { facing, tiltRad } = plane;
    const depth = depthPast(plane, problem.gap, x[i] as number, y[i] as number);
    borders.push({
      column: until(i, facing * Math.cos(tiltRad), facing * Math.sin(tiltRad)),
      softness: springSoftness(problem) / (2 * depth),
    });
  }
  return borders;
}

/** A held end does not turn. */
function only(n: number, at: number): Float64Array {
  const column = new Float64Array(n + 1);
  column[at] = 1;
  return column;
}

interface Tridiagonal {
  lower: Float64Array;
  diagonal: Float64Array;
  upper: Float64Array;
}

function secondVariation(
  problem: StripProblem,
  { slope, up, side, push }: StripState,
  borders: Border[],
): Tridiagonal {
  const n = slope.length - 1;
  const step = 2 / n;
  const { x, y } = placesOf(slope);
  const matrix = {
    lower: new Float64Array(n + 1).fill(-1 / step),
    diagonal: new Float64Array(n + 1),
    upper: new Float64Array(n + 1).fill(-1 / step),
  };
  let [held, left] = [up, side];
  for (let i = 0; i <= n; i++) {
    const angle = slope[i] as number;
    const plane =
      borders.length > 2 && (push[i] as number) > 0
        ? deepestOf(problem, x[i] as number, y[i] as number)
        : undefined;
    const v = held - problem.weight * step * i;
    let stiff = v * Math.cos(angle) + left * Math.sin(angle);
    if (plane !== undefined) {
      const force = plane.facing * (push[i] as number);
      held += force * Math.sin(plane.tiltRad);
      left -= force * Math.cos(plane.tiltRad);
      // Half of the push is felt on either side of its node.
      stiff = (stiff + (held - problem.weight * step * i) * Math.cos(angle) + left * Math.sin(angle)) / 2;
    }
    const end = i === 0 || i === n;
    matrix.diagonal[i] = (end ? 1 : 2) / step + (end ? step / 2 : step) * stiff;
  }
  return matrix;
}

/** Negative pivots of a symmetric tridiagonal matrix (Sturm's sequence). */
function negativePivots({ diagonal, upper }: Tridiagonal): number {
  let [count, pivot] = [0, 1];
  for (let i = 0; i < diagonal.length; i++) {
    const off = i === 0 ? 0 : (upper[i - 1] as number);
    pivot = (diagonal[i] as number) - (off * off) / pivot;
    if (pivot < 0) count++;
  }
  return count;
}

/** Negative eigenvalues of a small symmetric matrix: sign changes of its leading minors, by elimination. */
function negativeOf(rows: readonly Float64Array[]): number {
  const work = rows.map((row) => row.slice());
  let count = 0;
  for (let c = 0; c < work.length; c++) {
    const pivotRow = work[c] as Float64Array;
    const pivot = pivotRow[c] as number;
    if (pivot < 0) count++;
    for (let r = c + 1; r < work.length; r++) {
      const row = work[r] as Float64Array;
      const factor = (row[c] as number) / pivot;
      for (let k = c; k < work.length; k++) row[k] = (row[k] as number) - factor * (pivotRow[k] as number);
    }
  }
  return count;
}
