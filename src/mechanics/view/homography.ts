import { solveDense } from "../solve/dense.ts";

/** A point of a plane or of a picture. */
export type PlanePoint = readonly [x: number, y: number];

/** Nine numbers, row by row, that take a point of one plane to where it is seen in another. */
export type Homography = readonly [number, number, number, number, number, number, number, number, number];

/** Corners in order round a four-sided figure. */
export type FourPoints = readonly [PlanePoint, PlanePoint, PlanePoint, PlanePoint];

/**
 * The homography that takes four points to four others: the linear equations of Hartley & Zisserman, Multiple View
 * Geometry (2nd ed., §4.1), with its last number taken as 1. Undefined where three of the points lie on one line.
 */
export function homographyOf(from: FourPoints, to: FourPoints): Homography | undefined {
  if (!isFourSided(from) || !isFourSided(to)) return undefined;
  const rows: number[][] = [];
  const right: number[] = [];
  from.forEach(([x, y], k) => {
    const [u, v] = to[k] as PlanePoint;
    rows.push([x, y, 1, 0, 0, 0, -u * x, -u * y], [0, 0, 0, x, y, 1, -v * x, -v * y]);
    right.push(u, v);
  });
  const solved = solveDense(rows, right) && right.every(Number.isFinite);
  return solved ? ([...right, 1] as unknown as Homography) : undefined;
}

/** Where a point is seen; undefined where it lies on the line that is seen at infinity. */
export function throughHomography(h: Homography, [x, y]: PlanePoint): PlanePoint | undefined {
  const w = h[6] * x + h[7] * y + h[8];
  if (Math.abs(w) < 1e-12) return undefined;
  return [(h[0] * x + h[1] * y + h[2]) / w, (h[3] * x + h[4] * y + h[5]) / w];
}

/** Corners go round one way without a turn back, so that no three of them lie on one line. */
export function isFourSided(points: FourPoints): boolean {
  const size = Math.max(
    ...points.map(([x, y]) => Math.max(Math.abs(x - points[0][0]), Math.abs(y - points[0][1]))),
  );
  const turns = points.map((_, k) => {
    const [a, b, c] = [0, 1, 2].map((step) => points[(k + step) % 4]) as [PlanePoint, PlanePoint, PlanePoint];
    return (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0]);
  });
  const least = 1e-6 * size * size;
  return turns.every((turn) => turn > least) || turns.every((turn) => turn < -least);
}
