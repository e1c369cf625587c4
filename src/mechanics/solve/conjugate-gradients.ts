/** A symmetric positive matrix A = M + B, of which M is solved at once. */
export interface NearMatrix {
  /** Solves M·x = r in place of r. */
  solve(r: Float64Array): void;
  /** Adds B·x to `sum`. */
  addBeyond(x: Float64Array, sum: Float64Array): void;
}

/**
 * Conjugate gradients for a symmetric positive system, preconditioned by the part of it that is solved at once (Golub & Van
 * Loan, Matrix Computations, §11.5), from x = 0. The product with that part is carried along: M·z = r, so M·p comes of the
 * residuals. Stops when the residual, measured by the preconditioner, is `share` of what it was, or after `most` steps.
 */
export function conjugateGradients(
  right: Float64Array,
  { solve, addBeyond }: NearMatrix,
  { share, most }: { share: number; most: number },
): Float64Array {
  const n = right.length;
  const x = new Float64Array(n);
  const r = right.slice();
  const z = r.slice();
  solve(z);
  const p = z.slice();
  const nearP = r.slice();
  const q = new Float64Array(n);
  let rz = dot(r, z);
  const enough = rz * share * share;
  for (let step = 0; step < most && rz > enough && rz > 0; step++) {
    q.set(nearP);
    addBeyond(p, q);
    const bend = dot(p, q);
    if (!(bend > 0)) break;
    const along = rz / bend;
    for (let i = 0; i < n; i++) {
      x[i] = (x[i] as number) + along * (p[i] as number);
      r[i] = (r[i] as number) - along * (q[i] as number);
    }
    z.set(r);
    solve(z);
    const next = dot(r, z);
    const turn = next / rz;
    for (let i = 0; i < n; i++) {
      p[i] = (z[i] as number) + turn * (p[i] as number);
      nearP[i] = (r[i] as number) + turn * (nearP[i] as number);
    }
    rz = next;
  }
  return x;
}

/** Inner product of two vectors of one length. */
export function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i] as number) * (b[i] as number);
  return sum;
}
