import type { Point } from "../../model.ts";

/** A straight line: `a·x + b·y + c` is positive on the side that is kept. */
export interface CutLine {
  a: number;
  b: number;
  c: number;
}

/**
 * The parts of a simple closed line on one side of a straight one, each a simple closed line of its own: the chains that
 * lie there, joined along the straight line between neighbouring crossings.
 */
export function cutByLine(ring: readonly Point[], { a, b, c }: CutLine): (readonly Point[])[] {
  let [isAny, isAll] = [false, true];
  for (const [x, y] of ring) {
    if (a * x + b * y + c >= 0) isAny = true;
    else isAll = false;
  }
  if (isAll) return [ring];
  if (!isAny) return [];
  const sides = ring.map(([x, y]) => a * x + b * y + c);
  const count = ring.length;
  const chains: Point[][] = [];
  for (let k = 0; k < count; k++) {
    if ((sides[k] as number) >= 0 || (sides[(k + 1) % count] as number) < 0) continue;
    const points = [crossing(ring, sides, k)];
    let at = (k + 1) % count;
    while ((sides[at] as number) >= 0) {
      points.push(ring[at] as Point);
      at = (at + 1) % count;
    }
    points.push(crossing(ring, sides, (at + count - 1) % count));
    chains.push(points);
  }
  if (chains.length === 1) return chains;
  // Along the line an area begins and ends by turns.
  const along = alongOf(chains);
  const ends = chains.flatMap((points, chain) => [
    { chain, isEntry: true, at: along(points[0] as Point) },
    { chain, isEntry: false, at: along(points.at(-1) as Point) },
  ]);
  ends.sort((a, b) => a.at - b.at);
  const follows = new Map<number, number>();
  for (let k = 0; k + 1 < ends.length; k += 2) {
    const [one, other] = [ends[k], ends[k + 1]];
    if (one === undefined || other === undefined || one.isEntry === other.isEntry) return chains;
    follows.set(one.isEntry ? other.chain : one.chain, one.isEntry ? one.chain : other.chain);
  }
  const found: Point[][] = [];
  const left = new Set(chains.keys());
  for (const first of left) {
    const points: Point[] = [];
    let chain: number | undefined = first;
    while (chain !== undefined && left.delete(chain)) {
      points.push(...(chains[chain] as Point[]));
      chain = follows.get(chain);
    }
    found.push(points);
  }
  return found;
}

function crossing(ring: readonly Point[], sides: readonly number[], k: number): Point {
  const [a, b] = [ring[k] as Point, ring[(k + 1) % ring.length] as Point];
  const [u, v] = [sides[k] as number, sides[(k + 1) % ring.length] as number];
  const t = u / (u - v);
  return [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])];
}

/** Along the line through all crossings, by whichever of their coordinates spreads farther. */
function alongOf(chains: readonly Point[][]): (point: Point) => number {
  const ends = chains.flatMap((points) => [points[0] as Point, points.at(-1) as Point]);
  const spread = (c: 0 | 1) => Math.max(...ends.map((p) => p[c])) - Math.min(...ends.map((p) => p[c]));
  return spread(0) >= spread(1) ? (p) => p[0] : (p) => p[1];
}
