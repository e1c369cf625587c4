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
  const swapped = new Uint8Array(n);
  for (let i = 0; i + 1 < n; i++) {
    if (Math.abs(lower[i + 1] as number) > Math.abs(diagonal[i] as number)) {
      swapped[i] = 1;
      swapRows(lower, diagonal, upper, second, i);
    }
    const pivot = diagonal[i] as number;
    if (pivot === 0) return false;
    const factor = (lower[i + 1] as number) / pivot;
    diagonal[i + 1] = (diagonal[i + 1] as number) - factor * (upper[i] as number);
    upper[i + 1] = (upper[i + 1] as number) - factor * (second[i] as number);
    // The place of what is eliminated keeps its factor, for the right sides.
    lower[i + 1] = factor;
  }
  if (diagonal[n - 1] === 0) return false;
  // Dividing once for all right sides is what makes many of them cheap.
  for (let i = 0; i < n; i++) diagonal[i] = 1 / (diagonal[i] as number);
  for (let k = 0; k < rightSides.length; k++) {
    const side = rightSides[k] as Float64Array;
    eliminate(lower, swapped, side);
    substituteBack(diagonal, upper, second, side);
  }
  return true;
}

function swapRows(
  lower: Float64Array,
  diagonal: Float64Array,
  upper: Float64Array,
  second: Float64Array,
  i: number,
): void {
  const [d, u] = [diagonal[i] as number, upper[i] as number];
  diagonal[i] = lower[i + 1] as number;
  upper[i] = diagonal[i + 1] as number;
  second[i] = i + 2 < diagonal.length ? (upper[i + 1] as number) : 0;
  lower[i + 1] = d;
  diagonal[i + 1] = u;
  upper[i + 1] = 0;
}

function eliminate(factors: Float64Array, swapped: Uint8Array, b: Float64Array): void {
  for (let i = 0; i + 1 < b.length; i++) {
    if (swapped[i] === 1) {
      const kept = b[i] as number;
      b[i] = b[i + 1] as number;
      b[i + 1] = kept;
    }
    b[i + 1] = (b[i + 1] as number) - (factors[i + 1] as number) * (b[i] as number);
  }
}

function substituteBack(
  inverse: Float64Array,
  upper: Float64Array,
  second: Float64Array,
  b: Float64Array,
): void {
  const n = b.length;
  for (let i = n - 1; i >= 0; i--) {
    let sum = b[i] as number;
    if (i + 1 < n) sum -= (upper[i] as number) * (b[i + 1] as number);
    if (i + 2 < n) sum -= (second[i] as number) * (b[i + 2] as number);
    b[i] = sum * (inverse[i] as number);
  }
}
