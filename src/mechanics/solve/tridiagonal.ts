/**
 * Solves a tridiagonal system for several right-hand sides in place, with partial pivoting (Golub & Van Loan, Matrix
 * Computations, §4.3; the rows grow by one diagonal). Cost is linear in the order.
 *
 * `lower[i]` multiplies unknown i−1 and `upper[i]` unknown i+1 in row i. All arrays are overwritten; the right sides
 * hold the answers afterwards.
 *
 * @returns false where a pivot is zero, so that the matrix is singular to working precision
 */
export function solveTridiagonal(
  lower: Float64Array,
  diagonal: Float64Array,
  upper: Float64Array,
  rightSides: readonly Float64Array[],
): boolean {
  const n = diagonal.length;
  const second = new Float64Array(n);
  for (let i = 0; i + 1 < n; i++) {
    if (Math.abs(lower[i + 1] as number) > Math.abs(diagonal[i] as number)) {
      swapRows(lower, diagonal, upper, second, rightSides, i);
    }
    const pivot = diagonal[i] as number;
    if (pivot === 0) return false;
    const factor = (lower[i + 1] as number) / pivot;
    if (factor === 0) continue;
    diagonal[i + 1] = (diagonal[i + 1] as number) - factor * (upper[i] as number);
    upper[i + 1] = (upper[i + 1] as number) - factor * (second[i] as number);
    for (const b of rightSides) b[i + 1] = (b[i + 1] as number) - factor * (b[i] as number);
  }
  if (diagonal[n - 1] === 0) return false;
  for (const b of rightSides) substituteBack(diagonal, upper, second, b);
  return true;
}

function swapRows(
  lower: Float64Array,
  diagonal: Float64Array,
  upper: Float64Array,
  second: Float64Array,
  rightSides: readonly Float64Array[],
  i: number,
): void {
  const [d, u] = [diagonal[i] as number, upper[i] as number];
  diagonal[i] = lower[i + 1] as number;
  upper[i] = diagonal[i + 1] as number;
  second[i] = i + 2 < diagonal.length ? (upper[i + 1] as number) : 0;
  lower[i + 1] = d;
  diagonal[i + 1] = u;
  upper[i + 1] = 0;
  for (const b of rightSides) {
    const kept = b[i] as number;
    b[i] = b[i + 1] as number;
    b[i + 1] = kept;
  }
}

function substituteBack(
  diagonal: Float64Array,
  upper: Float64Array,
  second: Float64Array,
  b: Float64Array,
): void {
  const n = diagonal.length;
  for (let i = n - 1; i >= 0; i--) {
    let sum = b[i] as number;
    if (i + 1 < n) sum -= (upper[i] as number) * (b[i + 1] as number);
    if (i + 2 < n) sum -= (second[i] as number) * (b[i + 2] as number);
    b[i] = sum / (diagonal[i] as number);
  }
}
