import type { ShadePoint } from "../../shade-plan/index.ts";

/** How a loop stands out: reach of its outer and inner strand from the plane of the rings, mm. */
export interface LoopReach {
  outerMm: number;
  innerMm: number;
}

const SEGMENTS = 28;
/** 2 × 320 mm halved so often is far below a thousandth of a millimetre. */
const HALVINGS = 26;
const BINOMIALS = [1, 5, 10, 10, 5, 1];

/** Bernstein weights of the fifth degree at each point of the outline. */
const BLENDS: readonly (readonly number[])[] = Array.from({ length: SEGMENTS + 1 }, (_, step) => {
  const t = step / SEGMENTS;
  return BINOMIALS.map((times, i) => times * t ** i * (1 - t) ** (5 - i));
});

/**
 * Outline of one fold of limp cloth between two rings, both in the plane of the cords: `arcMm` of cloth over a
 * gap of `gapMm`, swung out towards the room and hanging below the lower ring.
 *
 * Points are (out, down) from the upper ring, mm; the drawn outline is as long as the cloth. A smooth curve
 * (Bézier) with the length of the cloth, its slack hanging as in the flexible limit; bending stiffness
 * is left out, so how far it stands out is approximate.
 */
export function foldOutline(arcMm: number, gapMm: number, reach: LoopReach): ShadePoint[] {
  const gap = Math.min(Math.max(gapMm, 0), arcMm);
  const curve = (share: number, droop: number) => curveOf(gap, reach, share, droop);
  // A loop too open for its full reach only bulges; one with more slack hangs at full reach.
  if (lengthOf(curve(1, 0)) >= arcMm) {
    const share = halve(0, 1, (value) => lengthOf(curve(value, 0)) < arcMm);
    return curve(share, 0);
  }
  const droop = halve(0, 2 * arcMm, (value) => lengthOf(curve(1, value)) < arcMm);
  return curve(1, droop);
}

/**
 * A Bézier curve of the fifth degree: out of the upper ring, down the outer strand, round the bottom, up the inner
 * strand, into the lower ring.
 */
function curveOf(gap: number, { outerMm, innerMm }: LoopReach, share: number, droop: number): ShadePoint[] {
  // In the middle of such a curve 30 of 32 parts of the weight lie on the four inner points.
  const outer = (share * outerMm * 32) / 30;
  const inner = (share * innerMm * 32) / 30;
  const control: readonly ShadePoint[] = [
    [0, 0],
    [outer, 0.18 * gap + 0.08 * droop],
    [outer, 0.38 * gap + droop],
    [inner, 0.62 * gap + droop],
    [inner, 0.82 * gap + 0.08 * droop],
    [0, gap],
  ];
  return BLENDS.map((weights): ShadePoint => {
    let out = 0;
    let down = 0;
    for (let i = 0; i < 6; i += 1) {
      out += (weights[i] ?? 0) * (control[i]?.[0] ?? 0);
      down += (weights[i] ?? 0) * (control[i]?.[1] ?? 0);
    }
    return [out, down];
  });
}

/** Length of a line of points, mm. */
function lengthOf(points: readonly ShadePoint[]): number {
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
