import { placesOf } from "./strip.ts";

/** Rounds of Newton's method: slopes that are nearly right close to 1e-12 in four. */
const ROUNDS = 5;

/**
 * Slopes changed as little as two smooth curves allow, so that the far hinge comes to lie straight below the upper one at
 * this gap: for shapes that were drawn between two solved ones, which close almost.
 */
export function closeStrip(slope: Float64Array, gap: number): Float64Array {
  const n = slope.length - 1;
  const closed = slope.slice();
  const curves = [(s: number) => Math.cos((Math.PI * s) / 2), (s: number) => Math.sin((Math.PI * s) / 2)];
  for (let round = 0; round < ROUNDS; round++) {
    const { x, y } = placesOf(closed);
    const [missX, missY] = [x[n] as number, (y[n] as number) - gap];
    if (Math.abs(missX) + Math.abs(missY) < 1e-13) break;
    const [a, b] = [moved(closed, curves[0] as Curve), moved(closed, curves[1] as Curve)];
    const determinant = a.x * b.y - b.x * a.y;
    if (determinant === 0) break;
    const first = (-missX * b.y + missY * b.x) / determinant;
    const second = (-missY * a.x + missX * a.y) / determinant;
    for (let i = 0; i <= n; i++) {
      const s = (2 * i) / n;
      closed[i] = (closed[i] as number) + first * (curves[0] as Curve)(s) + second * (curves[1] as Curve)(s);
    }
  }
  return closed;
}

type Curve = (s: number) => number;

/** How the far hinge moves when the slopes turn along a curve. */
function moved(slope: Float64Array, curve: Curve): { x: number; y: number } {
  const n = slope.length - 1;
  const step = 2 / n;
  const sum = { x: 0, y: 0 };
  for (let i = 0; i <= n; i++) {
    const turn = (i === 0 || i === n ? step / 2 : step) * curve(step * i);
    sum.x += turn * Math.cos(slope[i] as number);
    sum.y -= turn * Math.sin(slope[i] as number);
  }
  return sum;
}
