/** A row of numbers, plain or typed. */
interface Numbers {
  readonly length: number;
  [index: number]: number;
}

/**
 * Gauss elimination with partial pivoting of a small dense system (Golub & Van Loan, Matrix Computations, §3.4).
 * `rows` is square and, with `right`, overwritten; `right` holds the answer.
 *
 * @returns false where the matrix is singular to working precision
 */
export function solveDense(rows: Numbers[], right: Numbers): boolean {
  const n = right.length;
  for (let c = 0; c < n; c++) {
    pivotTo(rows, right, c);
    const pivotRow = rows[c] as Numbers;
    const pivot = pivotRow[c] as number;
    if (!(Math.abs(pivot) > 0)) return false;
    for (let r = c + 1; r < n; r++) {
      const row = rows[r] as Numbers;
      const factor = (row[c] as number) / pivot;
      if (factor === 0) continue;
      for (let k = c + 1; k < n; k++) row[k] = (row[k] as number) - factor * (pivotRow[k] as number);
      right[r] = (right[r] as number) - factor * (right[c] as number);
    }
  }
  for (let r = n - 1; r >= 0; r--) {
    const row = rows[r] as Numbers;
    let sum = right[r] as number;
    for (let k = r + 1; k < n; k++) sum -= (row[k] as number) * (right[k] as number);
    right[r] = sum / (row[r] as number);
  }
  return true;
}

function pivotTo(rows: Numbers[], right: Numbers, c: number): void {
  let best = c;
  let most = Math.abs((rows[c] as Numbers)[c] as number);
  for (let r = c + 1; r < right.length; r++) {
    const size = Math.abs((rows[r] as Numbers)[c] as number);
    if (size > most) {
      best = r;
      most = size;
    }
  }
  if (best === c) return;
  const row = rows[c] as Numbers;
  rows[c] = rows[best] as Numbers;
  rows[best] = row;
  const value = right[c] as number;
  right[c] = right[best] as number;
  right[best] = value;
}
