import { placesOf, type StripProblem, type StripState } from "./strip.ts";

/** What a shape measures, in units of the half arc. */
export interface StripShape {
  x: Float64Array;
  y: Float64Array;
  /** How far it stands out, and where along its arc. */
  depth: number;
  depthAt: number;
  /** Furthest behind the line of the hinges, 0 or less. */
  behind: number;
  /** How far its lowest point hangs under the lower hinge. */
  droop: number;
}

/** Largest reach in each direction between the nodes too, by a quintic through slope and place around the turning point. */
export function shapeOf({ gap }: StripProblem, state: StripState): StripShape {
  const { x, y } = placesOf(state.slope);
  const outwards = furthest(x, state, Math.sin, 1);
  return {
    x,
    y,
    depth: outwards.reach,
    depthAt: outwards.at,
    behind: Math.min(0, -furthest(x, state, Math.sin, -1).reach),
    droop: Math.max(0, furthest(y, state, Math.cos, 1).reach - gap),
  };
}

function furthest(
  places: Float64Array,
  { slope }: StripState,
  rate: (slope: number) => number,
  sign: 1 | -1,
): { reach: number; at: number } {
  const n = places.length - 1;
  const step = 2 / n;
  let top = 0;
  for (let i = 1; i <= n; i++) if (sign * (places[i] as number) > sign * (places[top] as number)) top = i;
  if (top === 0 || top === n) return { reach: sign * (places[top] as number), at: top * step };
  // Cubic through four slopes around the turning point, its zero by Newton, and its integral from the node.
  const from = Math.min(Math.max(top - 2, 0), n - 4);
  const rates = [0, 1, 2, 3, 4].map((k) => rate(slope[from + k] as number));
  const poly = quarticThrough(rates);
  let t = top - from;
  for (let round = 0; round < 6; round++) {
    const slopeAt = derivative(poly, t);
    if (slopeAt === 0) break;
    const next = t - value(poly, t) / slopeAt;
    if (!(Math.abs(next - (top - from)) <= 1)) break;
    t = next;
  }
  const reach = (places[top] as number) + step * (integral(poly, t) - integral(poly, top - from));
  return { reach: sign * reach, at: (from + t) * step };
}

/** Coefficients of the quartic through values at 0, 1, 2, 3, 4 (Newton's forward differences). */
function quarticThrough(values: number[]): number[] {
  const [a = 0, b = 0, c = 0, d = 0, e = 0] = values;
  const d1 = b - a;
  const d2 = c - 2 * b + a;
  const d3 = d - 3 * c + 3 * b - a;
  const d4 = e - 4 * d + 6 * c - 4 * b + a;
  return [a, d1 - d2 / 2 + d3 / 3 - d4 / 4, d2 / 2 - d3 / 2 + (11 * d4) / 24, d3 / 6 - d4 / 4, d4 / 24];
}

const value = (poly: number[], t: number) => poly.reduceRight((sum, c) => sum * t + c, 0);
const derivative = (poly: number[], t: number) =>
  poly.reduceRight((sum, c, k) => (k === 0 ? sum : sum * t + k * c), 0);
const integral = (poly: number[], t: number) => poly.reduceRight((sum, c, k) => sum * t + c / (k + 1), 0) * t;
