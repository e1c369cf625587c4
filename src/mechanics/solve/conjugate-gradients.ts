/**
 * Conjugate gradients for a symmetric positive system (Golub & Van Loan, Matrix Computations, §11.5), from x = 0.
 * `multiply` gives the product with the matrix, `precondition` solves a near system in place. Stops when the residual,
 * measured by the preconditioner, is `share` of what it was, or after `most` steps.
 */
export function conjugateGradients(
  right: Float64Array,
  multiply: (x: Float64Array) => Float64Array,
  precondition: (r: Float64Array) => void,
  { share, most }: { share: number; most: number },
): Float64Array {
  const n = right.length;
  const x = new Float64Array(n);
  const r = right.slice();
  let z = r.slice();
  precondition(z);
  const p = z.slice();
  let rz = dot(r, z);
  const enough = rz * share * share;
  for (let step = 0; step < most && rz > enough && rz > 0; step++) {
    const q = multiply(p);
    const bend = dot(p, q);
    if (!(bend > 0)) break;
    const along = rz / bend;
    for (let i = 0; i < n; i++) {
      x[i] = (x[i] as number) + along * (p[i] as number);
      r[i] = (r[i] as number) - along * (q[i] as number);
    }
    z = r.slice();
    precondition(z);
    const next = dot(r, z);
    const turn = next / rz;
    for (let i = 0; i < n; i++) p[i] = (z[i] as number) + turn * (p[i] as number);
    rz = next;
  }
  return x;
}

export function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += (a[i] as number) * (b[i] as number);
  return sum;
}
