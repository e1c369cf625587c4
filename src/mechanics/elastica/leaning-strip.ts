import { solveDense } from "../solve/dense.ts";
import { largestOf } from "../solve/largest-of.ts";
import type { Solved } from "../solve/outcome.ts";
import { solveTridiagonal } from "../solve/tridiagonal.ts";
import { STRIP_REACH_RAD, STRIP_RESIDUAL, STRIP_STEPS, STRIP_TURN_RAD } from "../tolerances.ts";
import { turnBetween } from "./strip.ts";

/**
 * A heavy strip as in `StripProblem` whose far part lies on a flat, smooth plane through its lower hinge, as a fold lies on
 * those gathered below it. What lies there is straight, so only the rest is solved, up to the place L where it lifts off:
 * there slope and curvature are those of the plane, and a single force acts. Where the strip does not touch the plane, L = 2.
 */
export interface LeaningProblem {
  weight: number;
  gap: number;
  /** How far the lower part of the plane leans forward, from the vertical. */
  tiltRad: number;
}

export interface LeaningState {
  /** At evenly spaced nodes from the upper hinge to the place of lifting off. */
  slope: Float64Array;
  /** L, in half arcs. */
  length: number;
  up: number;
  side: number;
}

/** Newton's method as in `hangStrip`, with L as one unknown more. */
export function leanStrip(
  problem: LeaningProblem,
  start: LeaningState,
  reach = STRIP_REACH_RAD,
): Solved<LeaningState> {
  const along = problem.tiltRad - Math.PI;
  if (start.length === 2) {
    const free = newton(problem, start, false, reach);
    if (free.kind === "notConverged" || (free.value.slope.at(-1) as number) >= along) return free;
    return newton(problem, free.value, true, Math.PI);
  }
  const leaning = newton(problem, start, true, reach);
  if (leaning.kind === "notConverged" || leaning.value.length < 2) return leaning;
  return newton(problem, { ...leaning.value, length: 2 }, false, Math.PI);
}

function newton(
  problem: LeaningProblem,
  start: LeaningState,
  leans: boolean,
  reach: number,
): Solved<LeaningState> {
  const state = { ...start, slope: start.slope.slice() };
  const system = workspace(start.slope.length, leans);
  let residual = Number.POSITIVE_INFINITY;
  for (let iterations = 0; iterations <= STRIP_STEPS; iterations++) {
    assemble(system, problem, state, leans);
    residual = system.residual;
    if (residual <= STRIP_RESIDUAL) {
      if (turnBetween(start.slope, state.slope) > reach) break;
      return { kind: "converged", value: state, iterations, residual };
    }
    if (!(residual < Number.POSITIVE_INFINITY) || !step(system, state, problem, leans)) break;
  }
  return { kind: "notConverged", best: state, iterations: STRIP_STEPS, residual };
}

interface System {
  sin: Float64Array;
  cos: Float64Array;
  lower: Float64Array;
  diagonal: Float64Array;
  upper: Float64Array;
  balance: Float64Array;
  /** Change of the balance with V, with H, and with L where the strip leans. */
  columns: Float64Array[];
  misfit: number[];
  residual: number;
}

/** L is moved by this share to see what that changes: the balance is smooth in it, so six digits of the rate are enough. */
const NUDGE = 1e-6;

/** Made once for all steps: the rounds of a raise would otherwise fill the memory with small arrays. */
function workspace(nodes: number, leans: boolean): System {
  const array = () => new Float64Array(nodes);
  return {
    sin: array(),
    cos: array(),
    lower: array(),
    diagonal: array(),
    upper: array(),
    balance: array(),
    columns: leans ? [array(), array(), array()] : [array(), array()],
    misfit: [],
    residual: 0,
  };
}

function assemble(system: System, problem: LeaningProblem, state: LeaningState, leans: boolean): void {
  const { slope, length } = state;
  const { sin, cos, balance, columns } = system;
  for (let i = 0; i < slope.length; i++) {
    sin[i] = Math.sin(slope[i] as number);
    cos[i] = Math.cos(slope[i] as number);
  }
  balanceNodes(system, problem, state);
  if (leans) {
    const byLength = columns[2] as Float64Array;
    balanceOnly(system, problem, state, length * (1 + NUDGE), byLength);
    for (let i = 0; i < byLength.length; i++) {
      byLength[i] = ((byLength[i] as number) - (balance[i] as number)) / (NUDGE * length);
    }
  }
  system.misfit = misfits(system, problem, state, leans);
  system.residual = Math.max(largestOf(balance), ...system.misfit.map(Math.abs));
}

/** Numerov's formula at each node, and half of it with the known rate at both ends (see `hangStrip`). */
function balanceNodes(
  system: System,
  { weight }: LeaningProblem,
  { slope, length, up, side }: LeaningState,
): void {
  const { sin, cos, lower, diagonal, upper, balance, columns } = system;
  const n = slope.length - 1;
  const h = length / n;
  const part = (h * h) / 12;
  const [byUp, bySide] = columns as [Float64Array, Float64Array];
  let [f0, f] = [0, up * (sin[0] as number) - side * (cos[0] as number)];
  let [r0, r] = [0, up * (cos[0] as number) + side * (sin[0] as number)];
  for (let i = 0; i <= n; i++) {
    const [s, c] = [sin[i] as number, cos[i] as number];
    let [row, own, ups, sides] = [0, 0, 0, 0];
    if (i > 0) {
      row += (slope[i - 1] as number) - (slope[i] as number) - part * (f0 + 5 * f);
      own -= 1 + 5 * part * r;
      lower[i] = 1 - part * r0;
      ups -= part * ((sin[i - 1] as number) + 5 * s);
      sides += part * ((cos[i - 1] as number) + 5 * c);
    }
    if (i < n) {
      const [s1, c1, v] = [sin[i + 1] as number, cos[i + 1] as number, up - weight * h * (i + 1)];
      const [f1, r1] = [v * s1 - side * c1, v * c1 + side * s1];
      row += (slope[i + 1] as number) - (slope[i] as number) - part * (f1 + 5 * f);
      own -= 1 + 5 * part * r;
      upper[i] = 1 - part * r1;
      ups -= part * (s1 + 5 * s);
      sides += part * (c1 + 5 * c);
      [f0, f, r0, r] = [f, f1, r, r1];
    }
    const end = i === 0 ? part * h * weight : i === n ? -part * h * weight : 0;
    balance[i] = row + end * s;
    diagonal[i] = own + end * c;
    byUp[i] = ups;
    bySide[i] = sides;
  }
}

/** The same balance for another L, slopes kept. */
function balanceOnly(
  { sin, cos }: System,
  { weight }: LeaningProblem,
  { slope, up, side }: LeaningState,
  length: number,
  into: Float64Array,
): void {
  const n = slope.length - 1;
  const h = length / n;
  const part = (h * h) / 12;
  const force = (i: number) => (up - weight * h * i) * (sin[i] as number) - side * (cos[i] as number);
  let [f0, f] = [0, force(0)];
  for (let i = 0; i <= n; i++) {
    let row = 0;
    if (i > 0) row += (slope[i - 1] as number) - (slope[i] as number) - part * (f0 + 5 * f);
    const f1 = i < n ? force(i + 1) : 0;
    if (i < n) row += (slope[i + 1] as number) - (slope[i] as number) - part * (f1 + 5 * f);
    const end = i === 0 ? part * h * weight : i === n ? -part * h * weight : 0;
    into[i] = row + end * (sin[i] as number);
    [f0, f] = [f, f1];
  }
}

function misfits(
  { sin, cos }: System,
  { gap, tiltRad }: LeaningProblem,
  { slope, length }: LeaningState,
  leans: boolean,
): number[] {
  const lying = 2 - length;
  const n = slope.length - 1;
  const x = trapezoid(sin, length);
  const y = trapezoid(cos, length);
  const free = [x - lying * Math.sin(tiltRad), y - gap - lying * Math.cos(tiltRad)];
  return leans ? [...free, (slope[n] as number) - (tiltRad - Math.PI)] : free;
}

/** Fourth order, since the curvature is 0 at both ends. */
function trapezoid(values: Float64Array, length: number): number {
  const n = values.length - 1;
  let sum = -((values[0] as number) + (values[n] as number)) / 2;
  for (let i = 0; i <= n; i++) sum += values[i] as number;
  return (sum * length) / n;
}

function step(system: System, state: LeaningState, { tiltRad }: LeaningProblem, leans: boolean): boolean {
  const { lower, diagonal, upper, balance, columns, misfit, sin, cos } = system;
  if (!solveTridiagonal(lower, diagonal, upper, [balance, ...columns])) return false;
  const { slope, length } = state;
  const n = slope.length - 1;
  const moved = [balance, ...columns].map((turn) => shifts(system, turn, length));
  const size = misfit.length;
  // Longer by dL: every place moves out with the mesh, and what lies on the plane gets shorter.
  const byLength = [
    trapezoid(sin, length) / length + Math.sin(tiltRad),
    trapezoid(cos, length) / length + Math.cos(tiltRad),
    0,
  ];
  const rows = Array.from({ length: size }, (_, r) =>
    Float64Array.from(
      { length: size },
      (_, c) => -((moved[c + 1] as number[])[r] as number) + (leans && c === 2 ? (byLength[r] as number) : 0),
    ),
  );
  const forces = Float64Array.from(misfit, (value, r) => ((moved[0] as number[])[r] as number) - value);
  if (!solveDense(rows, forces)) return false;
  let largest = 0;
  const turn = balance;
  for (let i = 0; i <= n; i++) {
    let sum = -(balance[i] as number);
    for (let k = 0; k < size; k++) sum -= (forces[k] as number) * ((columns[k] as Float64Array)[i] as number);
    turn[i] = sum;
    largest = Math.max(largest, Math.abs(sum));
  }
  if (!(largest < Number.POSITIVE_INFINITY)) return false;
  const share = Math.min(1, STRIP_TURN_RAD / largest);
  for (let i = 0; i <= n; i++) slope[i] = (slope[i] as number) + share * (turn[i] as number);
  state.up += share * (forces[0] as number);
  state.side += share * (forces[1] as number);
  if (leans) state.length += share * (forces[2] as number);
  return state.length > 0;
}

/** How far the end of the mesh moves, and turns, when the slopes turn so. */
function shifts({ sin, cos }: System, turn: Float64Array, length: number): [number, number, number] {
  const n = turn.length - 1;
  let [x, y] = [0, 0];
  for (let i = 0; i <= n; i++) {
    const share = (i === 0 || i === n ? 0.5 : 1) * (turn[i] as number);
    x += share * (cos[i] as number);
    y -= share * (sin[i] as number);
  }
  return [(x * length) / n, (y * length) / n, turn[n] as number];
}

/** Places from the upper hinge to the lower one, what lies on the plane as one straight piece at the end. */
export function leaningPoints(
  { slope, length }: LeaningState,
  { gap }: { gap: number },
): { x: number[]; y: number[] } {
  const n = slope.length - 1;
  const step = length / n;
  const [x, y] = [[0], [0]];
  let [sumX, sumY] = [0, 0];
  for (let i = 1; i <= n; i++) {
    const [a, b] = [slope[i - 1] as number, slope[i] as number];
    sumX += (step / 2) * (Math.sin(a) + Math.sin(b));
    sumY += (step / 2) * (Math.cos(a) + Math.cos(b));
    const bent = i < n ? ((slope[i + 1] as number) - a) / 24 : 0;
    x.push(sumX - step * Math.cos(b) * bent);
    y.push(sumY + step * Math.sin(b) * bent);
  }
  if (length < 2) {
    x.push(0);
    y.push(gap);
  }
  return { x, y };
}
