/** Rounds of Newton's method: slopes that are nearly right close to 1e-13 in four. */
const ROUNDS = 6;
const CLOSED = 1e-13;

/**
 * Slopes changed as little as two smooth curves allow, so that the far hinge comes to lie straight below the upper one at
 * this gap: for shapes that were drawn between two solved ones, which close almost. By the trapezoid rule on nodes.
 */
export function closeStrip(slope: Float64Array, gap: number): Float64Array {
  const n = slope.length - 1;
  return close(
    slope,
    gap,
    (i) => (i === 0 || i === n ? 1 / n : 2 / n),
    (i) => (2 * i) / n,
  );
}

/** The same for the edges of a polygon, all of one length. */
export function closeEdges(angle: Float64Array, gap: number): Float64Array {
  const n = angle.length;
  return close(
    angle,
    gap,
    () => 2 / n,
    (i) => (2 * i + 1) / n,
  );
}

function close(
  slope: Float64Array,
  gap: number,
  lengthAt: (i: number) => number,
  placeAt: (i: number) => number,
): Float64Array {
  const closed = slope.slice();
  for (let round = 0; round < ROUNDS; round++) {
    const sum = { x: 0, y: 0, ax: 0, ay: 0, bx: 0, by: 0 };
    for (let i = 0; i < closed.length; i++) {
      const [length, turn] = [lengthAt(i), (Math.PI * placeAt(i)) / 2];
      const [sin, cos] = [length * Math.sin(closed[i] as number), length * Math.cos(closed[i] as number)];
      const [a, b] = [Math.cos(turn), Math.sin(turn)];
      sum.x += sin;
      sum.y += cos;
      sum.ax += a * cos;
      sum.ay -= a * sin;
      sum.bx += b * cos;
      sum.by -= b * sin;
    }
    const [missX, missY] = [sum.x, sum.y - gap];
    const determinant = sum.ax * sum.by - sum.bx * sum.ay;
    if (Math.abs(missX) + Math.abs(missY) < CLOSED || determinant === 0) break;
    const first = (missY * sum.bx - missX * sum.by) / determinant;
    const second = (missX * sum.ay - missY * sum.ax) / determinant;
    for (let i = 0; i < closed.length; i++) {
      const turn = (Math.PI * placeAt(i)) / 2;
      closed[i] = (closed[i] as number) + first * Math.cos(turn) + second * Math.sin(turn);
    }
  }
  return closed;
}
