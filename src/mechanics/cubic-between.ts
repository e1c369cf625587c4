/**
 * A value between the second and the third of four in a row, at a share of the way: Hermite's cubic with the slopes of the
 * parabolas through three neighbours each (Catmull & Rom 1974, over spacings that differ).
 */
export function cubicBetween(
  [p, q, r, s]: readonly [number, number, number, number],
  [a, b, c]: readonly [number, number, number],
  t: number,
): number {
  const [before, own, after] = [(q - p) / a, (r - q) / b, (s - r) / c];
  const from = (before * b + own * a) / (a + b);
  const to = (own * c + after * b) / (b + c);
  const [t2, t3] = [t * t, t * t * t];
  return (
    (2 * t3 - 3 * t2 + 1) * q + (t3 - 2 * t2 + t) * b * from + (3 * t2 - 2 * t3) * r + (t3 - t2) * b * to
  );
}
