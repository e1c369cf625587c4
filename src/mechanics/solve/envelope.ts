/**
 * A symmetric matrix by its lower envelope: each row from its first entry that is not zero to the diagonal. Where the
 * unknowns lie along a strip the envelope is narrow, and a factor fills nothing outside it, so that one analysis of the
 * rows serves every matrix of the same pattern.
 */
export interface Envelope {
  size: number;
  /** First column of each row. */
  first: Int32Array;
  /** Where column 0 of each row would stand in `values`: entry (i, j) is `values[start[i] + j]`. */
  start: Int32Array;
  values: Float64Array;
}

/** An empty matrix whose row i begins at column `first[i]`, which is at most i. */
export function envelopeOf(first: Int32Array): Envelope {
  const size = first.length;
  const start = new Int32Array(size);
  let length = 0;
  for (let i = 0; i < size; i++) {
    start[i] = length - (first[i] as number);
    length += i - (first[i] as number) + 1;
  }
  return { size, first, start, values: new Float64Array(length) };
}

/**
 * Cholesky’s factor in place of the matrix, row by row (Golub & Van Loan, Matrix Computations, §4.2; the envelope by
 * Jennings 1966). False where the matrix is not positive definite.
 */
export function factorEnvelope(matrix: Envelope): boolean {
  const { size, first } = matrix;
  for (let i = 0; i < size; ) {
    const from = first[i] as number;
    // Three rows that begin alike, as the coordinates of a node do, share what they read of the rows above.
    const isThree = i + 2 < size && first[i + 1] === from && first[i + 2] === from;
    if (isThree) reduceThree(matrix, i);
    const count = isThree ? 3 : 1;
    for (let row = i; row < i + count; row++) if (!finishRow(matrix, row, isThree ? i : from)) return false;
    i += count;
  }
  return true;
}

/** Entries of three rows before the first of them. */
function reduceThree({ first, start, values }: Envelope, i: number): void {
  const from = first[i] as number;
  const [p, q, r] = [start[i] as number, start[i + 1] as number, start[i + 2] as number];
  for (let j = from; j < i; j++) {
    const other = start[j] as number;
    let [a, b, c] = [values[p + j] as number, values[q + j] as number, values[r + j] as number];
    for (let k = Math.max(from, first[j] as number); k < j; k++) {
      const value = values[other + k] as number;
      a -= value * (values[p + k] as number);
      b -= value * (values[q + k] as number);
      c -= value * (values[r + k] as number);
    }
    const pivot = 1 / (values[other + j] as number);
    values[p + j] = a * pivot;
    values[q + j] = b * pivot;
    values[r + j] = c * pivot;
  }
}

/** The entries of a row from this column on, and its pivot. */
function finishRow({ first, start, values }: Envelope, i: number, column: number): boolean {
  const from = first[i] as number;
  const row = start[i] as number;
  for (let j = column; j < i; j++) {
    const other = start[j] as number;
    let sum = values[row + j] as number;
    for (let k = Math.max(from, first[j] as number); k < j; k++)
      sum -= (values[row + k] as number) * (values[other + k] as number);
    values[row + j] = sum / (values[other + j] as number);
  }
  let pivot = values[row + i] as number;
  for (let k = from; k < i; k++) pivot -= (values[row + k] as number) ** 2;
  if (!(pivot > 0)) return false;
  values[row + i] = Math.sqrt(pivot);
  return true;
}

/** Solves L·Lᵀ·x = b in place of b, with the factor of `factorEnvelope`. */
export function solveEnvelope({ size, first, start, values }: Envelope, b: Float64Array): void {
  for (let i = 0; i < size; i++) {
    const row = start[i] as number;
    let sum = b[i] as number;
    for (let k = first[i] as number; k < i; k++) sum -= (values[row + k] as number) * (b[k] as number);
    b[i] = sum / (values[row + i] as number);
  }
  for (let i = size - 1; i >= 0; i--) {
    const row = start[i] as number;
    const x = (b[i] as number) / (values[row + i] as number);
    b[i] = x;
    for (let k = first[i] as number; k < i; k++) b[k] = (b[k] as number) - (values[row + k] as number) * x;
  }
}

/** Adds the product of the matrix (not its factor) with x to `sum`. */
export function multiplyEnvelope(
  { size, first, start, values }: Envelope,
  x: Float64Array,
  sum: Float64Array,
): void {
  for (let i = 0; i < size; i++) {
    const row = start[i] as number;
    const xi = x[i] as number;
    let own = (values[row + i] as number) * xi;
    for (let k = first[i] as number; k < i; k++) {
      const value = values[row + k] as number;
      own += value * (x[k] as number);
      sum[k] = (sum[k] as number) + value * xi;
    }
    sum[i] = (sum[i] as number) + own;
  }
}
