import type { Point } from "../../model.ts";

/**
 * Outlines of the cells of a grid that belong to an area, one simple closed line for each part of it: through the middles
 * of the cells’ edges, so that slants run straight; a hole is joined to its outline by a slit too narrow to be seen. In
 * cells, from the corner of the first.
 */
export function outlinesOf(wide: number, tall: number, isIn: (x: number, y: number) => boolean): Point[][] {
  const rings = ringsOf(wide, tall, isIn).map(simplified);
  const outer = rings.filter((ring) => areaOf(ring) > 0);
  const holes = rings.filter((ring) => areaOf(ring) < 0);
  // The smallest outline round a hole is its own.
  outer.sort((a, b) => areaOf(a) - areaOf(b));
  holes.sort((a, b) => leftmost(a)[0] - leftmost(b)[0]);
  for (const hole of holes) {
    const at = outer.findIndex((ring) => isInside(ring, leftmost(hole)));
    if (at >= 0) outer[at] = withHole(outer[at] as Point[], hole);
  }
  return outer;
}

/** Steps round a cell: right, down, left, up, as (dx, dy); the area lies to the right of the way. */
const STEPS: readonly Point[] = [
  [1, 0],
  [0, 1],
  [-1, 0],
  [0, -1],
];

function ringsOf(wide: number, tall: number, isIn: (x: number, y: number) => boolean): Point[][] {
  const inside = (x: number, y: number) => x >= 0 && y >= 0 && x < wide && y < tall && isIn(x, y);
  // An edge by the corner that it leaves and its direction.
  const edges = new Set<number>();
  const keyOf = (x: number, y: number, turn: number) => 4 * (y * (wide + 1) + x) + turn;
  for (let y = 0; y < tall; y++) {
    for (let x = 0; x < wide; x++) {
      if (!inside(x, y)) continue;
      if (!inside(x, y - 1)) edges.add(keyOf(x, y, 0));
      if (!inside(x + 1, y)) edges.add(keyOf(x + 1, y, 1));
      if (!inside(x, y + 1)) edges.add(keyOf(x + 1, y + 1, 2));
      if (!inside(x - 1, y)) edges.add(keyOf(x, y + 1, 3));
    }
  }
  const rings: Point[][] = [];
  for (const first of edges) {
    const ring: Point[] = [];
    let key = first;
    while (edges.delete(key)) {
      const turn = key % 4;
      const [dx, dy] = STEPS[turn] as Point;
      const corner = (key - turn) / 4;
      const [x, y] = [corner % (wide + 1), Math.floor(corner / (wide + 1))];
      ring.push([x + dx / 2, y + dy / 2]);
      // Cells that touch at a corner alone belong together, as in a thin slanting line: left before straight on before right.
      key =
        [3, 0, 1]
          .map((by) => keyOf(x + dx, y + dy, (turn + by) % 4))
          .find((next) => next === first || edges.has(next)) ?? first;
    }
    rings.push(ring);
  }
  return rings;
}

/** Points nearer than this to the line between their neighbours are left out, cells (Douglas & Peucker 1973). */
const NEAR = 0.3;

function simplified(ring: readonly Point[]): Point[] {
  if (ring.length < 5) return [...ring];
  // From two points that surely stay: the ends of its longest chord from the first.
  const far = ring.reduce(
    (best, point, k) =>
      distance(point, ring[0] as Point) > distance(ring[best] as Point, ring[0] as Point) ? k : best,
    0,
  );
  const closed = [...ring, ring[0] as Point];
  const found = [...chain(closed.slice(0, far + 1)).slice(0, -1), ...chain(closed.slice(far)).slice(0, -1)];
  return found.length < 3 ? [...ring] : found;
}

function chain(points: readonly Point[]): Point[] {
  const [from, to] = [points[0] as Point, points.at(-1) as Point];
  let [worst, at] = [0, 0];
  for (let k = 1; k + 1 < points.length; k++) {
    const off = offLine(points[k] as Point, from, to);
    if (off > worst) [worst, at] = [off, k];
  }
  if (worst < NEAR) return [from, to];
  return [...chain(points.slice(0, at + 1)).slice(0, -1), ...chain(points.slice(at))];
}

function offLine([x, y]: Point, [fx, fy]: Point, [tx, ty]: Point): number {
  const length = Math.hypot(tx - fx, ty - fy);
  if (length === 0) return Math.hypot(x - fx, y - fy);
  return Math.abs((tx - fx) * (y - fy) - (ty - fy) * (x - fx)) / length;
}

/** Half the width of the slit, cells. */
const SLIT = 0.004;

/** Cut open from the leftmost point of a hole straight to the left, up to the nearest edge there. */
function withHole(ring: readonly Point[], hole: readonly Point[]): Point[] {
  const start = hole.indexOf(leftmost(hole));
  const [hx, hy] = hole[start] as Point;
  let [edge, edgeX] = [-1, Number.NEGATIVE_INFINITY];
  ring.forEach(([ax, ay], k) => {
    const [bx, by] = ring[(k + 1) % ring.length] as Point;
    if (ay > hy === by > hy) return;
    const x = ax + ((hy - ay) / (by - ay)) * (bx - ax);
    if (x < hx && x > edgeX) [edge, edgeX] = [k, x];
  });
  if (edge < 0) return [...ring];
  // Outlines run with the area to their right: the edge met to the left of it runs upwards.
  const inner = [...hole.slice(start + 1), ...hole.slice(0, start)];
  return [
    ...ring.slice(0, edge + 1),
    [edgeX, hy + SLIT],
    [hx, hy + SLIT],
    ...inner,
    [hx, hy - SLIT],
    [edgeX, hy - SLIT],
    ...ring.slice(edge + 1),
  ];
}

function leftmost(ring: readonly Point[]): Point {
  return ring.reduce((best, point) => (point[0] < best[0] ? point : best));
}

export function areaOf(ring: readonly Point[]): number {
  let sum = 0;
  let [x, y] = ring.at(-1) ?? [0, 0];
  for (const [u, v] of ring) {
    sum += x * v - u * y;
    x = u;
    y = v;
  }
  return sum / 2;
}

function isInside(ring: readonly Point[], [x, y]: Point): boolean {
  let inside = false;
  ring.forEach(([ax, ay], k) => {
    const [bx, by] = ring[(k + 1) % ring.length] as Point;
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside;
  });
  return inside;
}

function distance(a: Point, b: Point): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1]);
}
