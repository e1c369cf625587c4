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
  from.forEach(([x, y], k) => {
    const [u, v] = to[k] as PlanePoint;
    rows.push([x, y, 1, 0, 0, 0, -u * x, -u * y, u], [0, 0, 0, x, y, 1, -v * x, -v * y, v]);
  });
  const solved = solveSquare(rows);
  return solved === undefined ? undefined : ([...solved, 1] as unknown as Homography);
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

/** Gauss's elimination with the largest pivot of each column; the last entry of each row is its right side. */
function solveSquare(rows: number[][]): number[] | undefined {
  const n = rows.length;
  for (let column = 0; column < n; column++) {
    let best = column;
    for (let row = column + 1; row < n; row++)
      if (Math.abs(at(row, column)) > Math.abs(at(best, column))) best = row;
    if (Math.abs(at(best, column)) < 1e-14) return undefined;
    [rows[column], rows[best]] = [rows[best] as number[], rows[column] as number[]];
    for (let row = 0; row < n; row++) {
      if (row === column) continue;
      const ratio = at(row, column) / at(column, column);
      for (let k = column; k <= n; k++) (rows[row] as number[])[k] = at(row, k) - ratio * at(column, k);
    }
  }
  return rows.map((row, k) => (row[n] as number) / (row[k] as number));

  function at(row: number, column: number): number {
    return rows[row]?.[column] as number;
  }
}
