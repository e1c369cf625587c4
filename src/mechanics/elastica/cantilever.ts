import { findRoot, type Root } from "../solve/find-root.ts";
import { bestOf, type Solved } from "../solve/outcome.ts";
import { solveTridiagonal } from "../solve/tridiagonal.ts";
import { STRIP_REACH_RAD, STRIP_RESIDUAL, STRIP_STEPS } from "../tolerances.ts";
import { follow } from "./follow.ts";

/** A heavy strip held level at its root, free at its tip, in units of its length. */
export interface Cantilever {
  /** How far the tip is out from the root and down from it. */
  out: number;
  down: number;
  tipRad: number;
  /** Of the straight line from root to tip, below level: what a bending tester reads. */
  chordRad: number;
  /** Curvature at the root times the length. */
  rootCurvature: number;
}

const NODES = 400;

/**
 * θ″ = −λ(1 − s) cos θ, θ(0) = 0, θ′(1) = 0, λ = wL³/B = (L/c)³ (Bickley, Phil. Mag. 17 (1934) 603; from memory) by
 * Numerov's formula and Newton, λ growing from nothing. Within 1e-6 of two independent solutions for λ ≤ 1000.
 */
export function cantilever(weight: number): Solved<Cantilever> {
  const start = new Float64Array(NODES + 1);
  const solved = follow<Float64Array>(start, (part, from) => bend((1 + weight) ** part - 1, from), 1 / 4);
  const { iterations, residual } = solved;
  const shape = measure(bestOf(solved), weight);
  return solved.kind === "converged"
    ? { kind: "converged", value: shape, iterations, residual }
    : { kind: "notConverged", best: shape, iterations, residual };
}

/** λ at which the chord hangs at this angle: overhang over bending length is its cube root. */
export function weightAtChord(chordRad: number): Root {
  return findRoot((weight) => bestOf(cantilever(weight)).chordRad - chordRad, 0, 200);
}

function bend(weight: number, start: Float64Array): Solved<Float64Array> {
  const slope = start.slice();
  const n = slope.length - 1;
  const part = 1 / (12 * n * n);
  let residual = Number.POSITIVE_INFINITY;
  for (let iterations = 0; iterations <= STRIP_STEPS; iterations++) {
    const lower = new Float64Array(n + 1);
    const diagonal = new Float64Array(n + 1).fill(1);
    const upper = new Float64Array(n + 1);
    const balance = new Float64Array(n + 1);
    const f = slope.map((angle, i) => -weight * (1 - i / n) * Math.cos(angle));
    const rate = slope.map((angle, i) => weight * (1 - i / n) * Math.sin(angle));
    const [at, force, change] = [reader(slope), reader(f), reader(rate)];
    for (let i = 1; i < n; i++) {
      balance[i] = at(i - 1) - 2 * at(i) + at(i + 1) - part * (force(i - 1) + 10 * force(i) + force(i + 1));
      lower[i] = 1 - part * change(i - 1);
      diagonal[i] = -2 - 10 * part * change(i);
      upper[i] = 1 - part * change(i + 1);
    }
    // At the free tip f is nothing but f′ = λ cos θ is not.
    balance[n] = at(n - 1) - at(n) - part * force(n - 1) + (part / n) * weight * Math.cos(at(n));
    lower[n] = 1 - part * change(n - 1);
    diagonal[n] = -1 - (part / n) * weight * Math.sin(at(n));
    residual = balance.reduce((most, row) => Math.max(most, Math.abs(row)), 0);
    if (residual <= STRIP_RESIDUAL) {
      const turned = slope.reduce(
        (most, angle, i) => Math.max(most, Math.abs(angle - (start[i] as number))),
        0,
      );
      if (turned > 2 * STRIP_REACH_RAD) break;
      return { kind: "converged", value: slope, iterations, residual };
    }
    if (!solveTridiagonal(lower, diagonal, upper, [balance])) break;
    for (let i = 0; i <= n; i++) slope[i] = at(i) - (balance[i] as number);
  }
  return { kind: "notConverged", best: start, iterations: STRIP_STEPS, residual };
}

const reader = (list: Float64Array) => (i: number) => list[i] as number;

function measure(slope: Float64Array, weight: number): Cantilever {
  const n = slope.length - 1;
  const at = reader(slope);
  let [out, down, moment] = [0, 0, 0];
  for (let i = 0; i <= n; i++) {
    const share = (i === 0 || i === n ? 0.5 : 1) / n;
    out += share * Math.cos(at(i));
    down += share * Math.sin(at(i));
    moment += share * (1 - i / n) * Math.cos(at(i));
  }
  // End corrections of the trapezoid rule; the moment of the weight bends the root.
  const rootCurvature = weight * (moment - (1 - Math.cos(at(n))) / (12 * n * n));
  down += rootCurvature / (12 * n * n);
  return { out, down, tipRad: at(n), chordRad: Math.atan2(down, out), rootCurvature };
}
