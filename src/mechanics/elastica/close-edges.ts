/** Rounds of Newton's method: slopes that are nearly right close in three. */
const ROUNDS = 8;
/** Half arcs: a ten-millionth of a millimetre in a fold of 200 mm. */
const CLOSED = 1e-9;

/** The two curves at the middles of the edges, for each number of edges that was asked for. */
const curves = new Map<number, { a: Float64Array; b: Float64Array }>();

/**
 * Angles of the edges of a polygon, all of one length, changed as little as two smooth curves allow, so that its end comes to
 * lie straight below its beginning at this gap: for shapes drawn between two solved ones, which close almost. In place.
 */
export function closeEdges(angle: Float64Array, gap: number): void {
  const n = angle.length;
  const { a, b } = curvesOf(n);
  for (let round = 0; round < ROUNDS; round++) {
    let [x, y, ax, ay, bx, by] = [0, 0, 0, 0, 0, 0];
    for (let i = 0; i < n; i++) {
      const sin = Math.sin(angle[i] as number);
      const cos = Math.cos(angle[i] as number);
      const [ai, bi] = [a[i] as number, b[i] as number];
      x += sin;
      y += cos;
      ax += ai * cos;
      ay -= ai * sin;
      bx += bi * cos;
      by -= bi * sin;
    }
    const [missX, missY] = [x, y - (gap * n) / 2];
    const determinant = ax * by - bx * ay;
    if ((Math.abs(missX) + Math.abs(missY)) * 2 < CLOSED * n || determinant === 0) return;
    const first = (missY * bx - missX * by) / determinant;
    const second = (missX * ay - missY * ax) / determinant;
    for (let i = 0; i < n; i++) {
      angle[i] = (angle[i] as number) + first * (a[i] as number) + second * (b[i] as number);
    }
  }
}

function curvesOf(n: number): { a: Float64Array; b: Float64Array } {
  const known = curves.get(n);
  if (known !== undefined) return known;
  const turn = new Float64Array(n).map((_, i) => (Math.PI * (2 * i + 1)) / (2 * n));
  const made = { a: turn.map(Math.cos), b: turn.map(Math.sin) };
  curves.set(n, made);
  return made;
}
