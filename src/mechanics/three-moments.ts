/**
 * Moments over the supports of a continuous beam by the three-moment equation (Clapeyron), sagging positive:
 * l₁M₀ + 2(l₁ + l₂)M₁ + l₂M₂ = what the loads of both bays ask for. A tridiagonal system, so the cost grows with the supports.
 *
 * @param bays lengths from support to support
 * @param ends over the outer supports, by what overhangs
 * @param askedOver right side of the equation over an inner support
 */
export function threeMoments(
  bays: readonly number[],
  ends: readonly [first: number, last: number],
  askedOver: (support: number) => number,
): number[] {
  const n = bays.length;
  const moments = new Array<number>(n + 1).fill(0);
  moments[0] = ends[0];
  if (n > 0) moments[n] = ends[1];
  const carried = new Array<number>(n).fill(0);
  const value = new Array<number>(n).fill(0);
  value[0] = ends[0];
  for (let i = 1; i < n; i++) {
    const [before, after] = [bays[i - 1] as number, bays[i] as number];
    const pivot = 2 * (before + after) - before * (carried[i - 1] as number);
    carried[i] = after / pivot;
    value[i] = (askedOver(i) - before * (value[i - 1] as number)) / pivot;
  }
  for (let i = n - 1; i > 0; i--)
    moments[i] = (value[i] as number) - (carried[i] as number) * (moments[i + 1] as number);
  return moments;
}
