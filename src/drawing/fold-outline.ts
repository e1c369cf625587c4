import type { Point } from "./model.ts";

/** How a loop stands out: reach of its outer and inner strand from the plane of the rings, mm. */
export interface LoopReach {
  outerMm: number;
  innerMm: number;
}

const SEGMENTS = 28;
const HALVINGS = 44;

/**
 * Outline of one fold of limp cloth between two rings, both in the plane of the cords: `arcMm` of cloth over a
 * gap of `gapMm`, swung out towards the room and hanging below the lower ring.
 *
 * Points are (out, down) from the upper ring, mm; the drawn outline is as long as the cloth. A smooth curve
 * (cubic Bézier) with the length of the cloth, its slack hanging as in the flexible limit; bending stiffness
 * is left out, so how far it stands out is approximate.
 */
export function foldOutline(arcMm: number, gapMm: number, reach: LoopReach): Point[] {
  const gap = Math.min(Math.max(gapMm, 0), arcMm);
  const curve = (share: number, droop: number) => bezier(gap, reach, share, droop);
  // A loop too open for its full reach only bulges; one with more slack hangs at full reach.
  if (lengthOf(curve(1, 0)) >= arcMm) {
    const share = halve(0, 1, (value) => lengthOf(curve(value, 0)) < arcMm);
    return curve(share, 0);
  }
  const droop = halve(0, 2 * arcMm, (value) => lengthOf(curve(1, value)) < arcMm);
  return curve(1, droop);
}

function bezier(gap: number, { outerMm, innerMm }: LoopReach, share: number, droop: number): Point[] {
  const points: Point[] = [];
  // A cubic reaches three quarters of the way to control points at equal distance.
  const outer = (share * outerMm) / 0.75;
  const inner = (share * innerMm) / 0.75;
  for (let i = 0; i <= SEGMENTS; i += 1) {
    const t = i / SEGMENTS;
    const u = 1 - t;
    const first = 3 * u * u * t;
    const second = 3 * u * t * t;
    const out = first * outer + second * inner;
    const down = first * droop + second * (gap + droop) + t * t * t * gap;
    points.push([out, down]);
  }
  return points;
}

/** Length of a line of points, mm. */
export function lengthOf(points: readonly Point[]): number {
  let sum = 0;
  for (let i = 1; i < points.length; i += 1) {
    const a = points[i - 1];
    const b = points[i];
    if (a !== undefined && b !== undefined) sum += Math.hypot(b[0] - a[0], b[1] - a[1]);
  }
  return sum;
}

function halve(low: number, high: number, isTooLow: (value: number) => boolean): number {
  let from = low;
  let to = high;
  for (let i = 0; i < HALVINGS; i += 1) {
    const middle = (from + to) / 2;
    if (isTooLow(middle)) from = middle;
    else to = middle;
  }
  return (from + to) / 2;
}
