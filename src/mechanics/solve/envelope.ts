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
  const { size } = matrix;
  for (let i = 0; i < size; ) {
    // Three rows that begin alike, as the coordinates of a node do, share what they read of the rows above.
    const isThree = beginAlike(matrix, i, size);
    if (isThree) reduceThree(matrix, i);
    const count = isThree ? 3 : 1;
    for (let row = i; row < i + count; row++)
      if (!finishRow(matrix, row, isThree ? i : (matrix.first[row] as number))) return false;
    i += count;
  }
  return true;
}

function beginAlike({ first }: Envelope, i: number, end: number): boolean {
  return i + 2 < end && first[i + 1] === first[i] && first[i + 2] === first[i];
}

/** Entries of three rows before the first of them: nine at a time where the rows above go by threes too. */
function reduceThree(matrix: Envelope, i: number): void {
  const { first, start } = matrix;
  for (let j = first[i] as number; j < i; ) {
    const rows = { i, j, from: Math.max(first[i] as number, first[j] as number) };
    if (beginAlike(matrix, j, i)) {
      reduceNine(matrix, rows, start);
      j += 3;
    } else {
      reduceColumn(matrix, rows);
      j++;
    }
  }
}

interface Reduced {
  /** The first of three rows, the row above that is taken away from them, and the first column that both have. */
  i: number;
  j: number;
  from: number;
}

function reduceColumn({ start, values }: Envelope, { i, j, from }: Reduced): void {
  const other = start[j] as number;
  const [p, q, r] = [start[i] as number, start[i + 1] as number, start[i + 2] as number];
  let a = values[p + j] as number;
  let b = values[q + j] as number;
  let c = values[r + j] as number;
  for (let k = from; k < j; k++) {
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

/** Three rows by three rows above: six values are read for nine products. */
function reduceNine({ values }: Envelope, { i, j, from }: Reduced, start: Int32Array): void {
  const p = start[i] as number;
  const q = start[i + 1] as number;
  const r = start[i + 2] as number;
  const u = start[j] as number;
  const v = start[j + 1] as number;
  const w = start[j + 2] as number;
  let [pu, pv, pw] = [values[p + j] as number, values[p + j + 1] as number, values[p + j + 2] as number];
  let [qu, qv, qw] = [values[q + j] as number, values[q + j + 1] as number, values[q + j + 2] as number];
  let [ru, rv, rw] = [values[r + j] as number, values[r + j + 1] as number, values[r + j + 2] as number];
  for (let k = from; k < j; k++) {
    const a = values[p + k] as number;
    const b = values[q + k] as number;
    const c = values[r + k] as number;
    const x = values[u + k] as number;
    const y = values[v + k] as number;
    const z = values[w + k] as number;
    pu -= a * x;
    pv -= a * y;
    pw -= a * z;
    qu -= b * x;
    qv -= b * y;
    qw -= b * z;
    ru -= c * x;
    rv -= c * y;
    rw -= c * z;
  }
  // Against the three rows themselves, from left to right.
  const first = 1 / (values[u + j] as number);
  pu *= first;
  qu *= first;
  ru *= first;
  const beside = values[v + j] as number;
  const second = 1 / (values[v + j + 1] as number);
  pv = (pv - beside * pu) * second;
  qv = (qv - beside * qu) * second;
  rv = (rv - beside * ru) * second;
  const left = values[w + j] as number;
  const middle = values[w + j + 1] as number;
  const third = 1 / (values[w + j + 2] as number);
  values[p + j] = pu;
  values[p + j + 1] = pv;
  values[p + j + 2] = (pw - left * pu - middle * pv) * third;
  values[q + j] = qu;
  values[q + j + 1] = qv;
  values[q + j + 2] = (qw - left * qu - middle * qv) * third;
  values[r + j] = ru;
  values[r + j + 1] = rv;
  values[r + j + 2] = (rw - left * ru - middle * rv) * third;
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
