/**
 * A heavy strip between two hinges on one vertical line, in its own units: half its arc is 1 and its flexural rigidity
 * is 1, so that the one number left is λ = w a³ / B.
 *
 *   θ″ = (V − λ s) sin θ − H cos θ,   x′ = sin θ,   y′ = cos θ,   0 ≤ s ≤ 2
 *
 * θ is measured from the downward vertical towards the bulge, y runs down from the top hinge. V is what the top hinge
 * pulls up with and H the sideways force inside the strip.
 */
export interface StripProblem {
  /** λ, weight against stiffness. */
  weight: number;
  /** Height between the hinges. */
  gap: number;
  /** How far behind the line of the hinges a pane stands; Infinity where there is none. */
  pane: number;
  /** The same below the lower hinge, where the cloth that is gathered hangs behind. */
  back: number;
}

/** A shape of the strip at evenly spaced nodes. */
export interface StripState {
  slope: Float64Array;
  up: number;
  side: number;
  /** Force of the pane on each node, towards the bulge. */
  push: Float64Array;
}

export function copyState({ slope, up, side, push }: StripState): StripState {
  return { slope: slope.slice(), up, side, push: push.slice() };
}

/** Places of the nodes by the trapezoid rule with its first correction: fourth order in the step. */
export function placesOf(slope: Float64Array): { x: Float64Array; y: Float64Array } {
  const n = slope.length - 1;
  const step = 2 / n;
  const x = new Float64Array(n + 1);
  const y = new Float64Array(n + 1);
  let [sumX, sumY] = [0, 0];
  let [sinWas, cosWas] = [Math.sin(slope[0] as number), Math.cos(slope[0] as number)];
  for (let i = 1; i <= n; i++) {
    const sin = Math.sin(slope[i] as number);
    const cos = Math.cos(slope[i] as number);
    sumX += (step / 2) * (sinWas + sin);
    sumY += (step / 2) * (cosWas + cos);
    const bent = i < n ? ((slope[i + 1] as number) - (slope[i - 1] as number)) / 24 : 0;
    x[i] = sumX - step * cos * bent;
    y[i] = sumY + step * sin * bent;
    [sinWas, cosWas] = [sin, cos];
  }
  return { x, y };
}
