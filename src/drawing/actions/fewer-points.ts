import type { Point, Primitive } from "../model.ts";

/**
 * How far a line may lie beside what was drawn, in units of an action drawing: a fiftieth of a millimetre on paper,
 * half a pixel where the drawing fills a screen.
 */
export const MOST_BESIDE = 0.08;

/** The same drawing with fewer points: rounded things are drawn densely, and a page shows a third of it. */
export function drawnWithFewerPoints(primitives: readonly Primitive[]): Primitive[] {
  return primitives.map((one) =>
    one.kind === "polyline" ? { ...one, points: withFewerPoints(one.points, MOST_BESIDE) } : one,
  );
}

/**
 * A line with the fewest of its points that Douglas and Peucker's method finds (The Canadian Cartographer 10, 1973,
 * "Algorithms for the reduction of the number of points required to represent a digitized line"):
 * no point left out lies further from the line that stays than `most`, in the unit of the points. Its ends stay.
 */
export function withFewerPoints(points: readonly Point[], most: number): readonly Point[] {
  if (points.length < 3) return points;
  const stays = new Uint8Array(points.length);
  stays[0] = 1;
  stays[points.length - 1] = 1;
  const open: [from: number, to: number][] = [[0, points.length - 1]];
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    const [from, to] = next;
    const i = farthest(points, from, to, most);
    if (i === undefined) continue;
    stays[i] = 1;
    open.push([from, i], [i, to]);
  }
  return points.filter((_, i) => stays[i] === 1);
}

/** The point between two others that lies furthest from the stretch between them; none further than `most`, none. */
function farthest(points: readonly Point[], from: number, to: number, most: number): number | undefined {
  const [ax, ay] = points[from] as Point;
  const [bx, by] = points[to] as Point;
  const [dx, dy] = [bx - ax, by - ay];
  const squared = dx * dx + dy * dy;
  let found: number | undefined;
  let furthest = most * most;
  for (let i = from + 1; i < to; i += 1) {
    const [x, y] = points[i] as Point;
    const share = squared === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / squared));
    const [ex, ey] = [x - ax - share * dx, y - ay - share * dy];
    const away = ex * ex + ey * ey;
    if (away > furthest) {
      furthest = away;
      found = i;
    }
  }
  return found;
}
