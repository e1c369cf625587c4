import { PANE_SINK } from "../tolerances.ts";

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
  /** What the strip leans on and cannot pass. */
  planes: readonly Plane[];
  /** Ends that are held at a slope, rad, where they are no hinges: cloth that runs on through its row. */
  held?: { top?: number; bottom?: number };
}

/** A flat, smooth plane that the strip stays on one side of. */
export interface Plane {
  /** A point of it: out from the line of the hinges, and down from the upper hinge. */
  out: number;
  down: number;
  /** How far its lower part leans forward, from the vertical. */
  tiltRad: number;
  /** 1: the strip stays in front of it; −1: behind it. */
  facing: 1 | -1;
  /** It begins at the lower hinge, from which `down` is measured, and holds only what hangs below. */
  hanging?: boolean;
}

/** A spring of a plane pushes with its depth squared over this. */
export function springSoftness({ weight }: StripProblem): number {
  return PANE_SINK ** 2 / (10 + 2 * Math.sqrt(weight));
}

/** How far a point is past a plane: above 0 where the plane pushes it back. */
export function depthPast(plane: Plane, gap: number, x: number, y: number): number {
  const below = plane.hanging === true ? y - gap : y;
  if (plane.hanging === true && below <= 0) return Number.NEGATIVE_INFINITY;
  const { out, down, tiltRad, facing } = plane;
  return -facing * ((x - out) * Math.cos(tiltRad) - (below - down) * Math.sin(tiltRad));
}

/** A shape of the strip at evenly spaced nodes. */
export interface StripState {
  slope: Float64Array;
  up: number;
  side: number;
  /** Force of a plane on each node, square to the plane. */
  push: Float64Array;
}

export function copyState({ slope, up, side, push }: StripState): StripState {
  return { slope: slope.slice(), up, side, push: push.slice() };
}

/** Most that any node turns from one shape to another, rad. */
export function turnBetween(a: Float64Array, b: Float64Array): number {
  let most = 0;
  for (let i = 0; i < a.length; i++) most = Math.max(most, Math.abs((a[i] as number) - (b[i] as number)));
  return most;
}

/** What the planes push with altogether: towards the bulge, up, and as a moment about the upper hinge that turns the strip forward. */
export interface PlaneForces {
  out: number;
  up: number;
  moment: number;
}

/** The same for the planes that face one way. */
export function planeForces(problem: StripProblem, { slope, push }: StripState, facing: 1 | -1): PlaneForces {
  const { x, y } = placesOf(slope);
  const sum: PlaneForces = { out: 0, up: 0, moment: 0 };
  for (let i = 0; i < push.length; i++) {
    const force = push[i] as number;
    const plane = force > 0 ? deepestOf(problem, x[i] as number, y[i] as number) : undefined;
    if (plane?.facing !== facing) continue;
    const [out, up] = [facing * force * Math.cos(plane.tiltRad), facing * force * Math.sin(plane.tiltRad)];
    sum.out += out;
    sum.up += up;
    sum.moment += out * (y[i] as number) + up * (x[i] as number);
  }
  return sum;
}

/** The plane that a point is furthest past; none where it is past no plane. */
export function deepestOf({ planes, gap }: StripProblem, x: number, y: number): Plane | undefined {
  let [deepest, by]: [number, Plane | undefined] = [0, undefined];
  for (const plane of planes) {
    const depth = depthPast(plane, gap, x, y);
    if (depth > deepest) [deepest, by] = [depth, plane];
  }
  return by;
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
