import { conjugateGradients, dot } from "../solve/conjugate-gradients.ts";
import { factorEnvelope, multiplyEnvelope, solveEnvelope } from "../solve/envelope.ts";
import { bestOf, type Solved } from "../solve/outcome.ts";
import type { ClothNet } from "./net.ts";
import { netEnergy } from "./net-energy.ts";
import { eachContactNode, fillMatrix, type NetPattern, pressedContacts } from "./net-matrix.ts";

export interface SettleOptions {
  /** Steps at most. */
  most: number;
  /** Settled when the next step would move no node farther, mm. */
  stillMm: number;
  /** No node moves farther in one step, mm. */
  reachMm: number;
  /**
   * Shares of their stiffness that the threads have by turns, the whole of it last: soft threads let the net turn, stiff
   * ones then only draw it to length. Stiff from the start, a step that turns a thread stretches it and is cut to nothing.
   */
  stiffening: readonly number[];
  /** Told the energy after every step, N·mm. */
  onStep?: (energy: number) => void;
}

/** A step must win this share of what its slope promises (Nocedal & Wright, Numerical Optimization, §3.1). */
const ARMIJO = 1e-4;
const HALVINGS = 24;
const CG = { share: 1e-3, most: 40 };

/**
 * Where the net comes to rest from a shape near it: Newton’s method on its energy, halving every step that would raise it.
 * Deterministic; the energy never rises.
 */
export function settleNet(
  net: ClothNet,
  pattern: NetPattern,
  start: Float64Array,
  { stiffening, ...options }: SettleOptions,
): Solved<Float64Array> {
  let x = start;
  let taken = 0;
  for (const share of stiffening) {
    const last = share === 1;
    const stiffness = net.threads.stiffness.map((whole) => whole * share);
    const softer = last ? net : { ...net, threads: { ...net.threads, stiffness } };
    const stillMm = last ? options.stillMm : Math.max(options.stillMm, PASSING_MM);
    const found = settleOnce(softer, pattern, x, { ...options, stillMm });
    taken += found.iterations;
    if (last) return { ...found, iterations: taken };
    x = bestOf(found);
  }
  throw new Error(`invalid stiffening: ${stiffening.join()}`);
}

/** How still a net of softened threads must be before they are stiffened, mm. */
const PASSING_MM = 1;

function settleOnce(
  net: ClothNet,
  pattern: NetPattern,
  start: Float64Array,
  { most, stillMm, reachMm, onStep }: Omit<SettleOptions, "stiffening">,
): Solved<Float64Array> {
  const x = start.slice();
  const gradient = new Float64Array(x.length);
  let move = Number.POSITIVE_INFINITY;
  for (let iterations = 0; iterations < most; iterations++) {
    gradient.fill(0);
    const energy = netEnergy(net, x, gradient);
    const step = newtonStep(net, pattern, x, gradient);
    if (step === undefined) return { kind: "notConverged", best: x, iterations, residual: move };
    move = longest(step);
    if (move <= stillMm) return { kind: "converged", value: x, iterations, residual: move };
    if (move > reachMm) for (let i = 0; i < step.length; i++) step[i] = ((step[i] as number) * reachMm) / move;
    const won = searchAlong(net, x, step, energy, dot(gradient, step));
    if (won === undefined) return { kind: "notConverged", best: x, iterations, residual: move };
    onStep?.(won);
  }
  return { kind: "notConverged", best: x, iterations: most, residual: move };
}

function newtonStep(net: ClothNet, pattern: NetPattern, x: Float64Array, gradient: Float64Array) {
  const { row, rows, matrix } = pattern;
  fillMatrix(net, pattern, x);
  const whole = matrix.values.slice();
  if (!factorEnvelope(matrix)) return undefined;
  const right = new Float64Array(rows);
  for (let i = 0; i < row.length; i++) if ((row[i] as number) >= 0) right[row[i] as number] = -(gradient[i] as number);
  const pressed = pressedContacts(net, x).map(({ at, slope }) => {
    const rowsOf: number[] = [];
    const weights: number[] = [];
    eachContactNode(net, at, (i, weight) => {
      const r = row[i] as number;
      if (r < 0) return;
      rowsOf.push(r);
      weights.push(weight);
    });
    return { slope, rowsOf, weights, sides: (net.contacts.nodes[3 * at + 1] as number) < 0 ? 1 : 2 };
  });
  let solution: Float64Array = right;
  if (pressed.some(({ sides }) => sides === 2)) {
    const plain = { ...matrix, values: whole };
    const multiply = (v: Float64Array) => {
      const sum = new Float64Array(rows);
      multiplyEnvelope(plain, v, sum);
      for (const { slope, rowsOf, weights, sides } of pressed) {
        let depth = 0;
        for (let i = 0; i < rowsOf.length; i++) depth += (weights[i] as number) * (v[rowsOf[i] as number] as number);
        for (let i = 0; i < rowsOf.length; i++) {
          const r = rowsOf[i] as number;
          const weight = weights[i] as number;
          sum[r] = (sum[r] as number) + slope * (weight * depth - sides * Math.abs(weight) * (v[r] as number));
        }
      }
      return sum;
    };
    solution = conjugateGradients(right, multiply, (r) => solveEnvelope(matrix, r), CG);
  } else solveEnvelope(matrix, solution);
  const step = new Float64Array(row.length);
  for (let i = 0; i < row.length; i++) if ((row[i] as number) >= 0) step[i] = solution[row[i] as number] as number;
  return step;
}

function longest(step: Float64Array): number {
  let most = 0;
  for (let i = 0; i < step.length; i += 3)
    most = Math.max(most, Math.hypot(step[i] as number, step[i + 1] as number, step[i + 2] as number));
  return most;
}

/** Moves x along the step, halved until the energy falls; the energy then, or undefined where it does not. */
function searchAlong(
  net: ClothNet,
  x: Float64Array,
  step: Float64Array,
  energy: number,
  slope: number,
): number | undefined {
  if (!(slope < 0)) return undefined;
  const from = x.slice();
  for (let k = 0, share = 1; k < HALVINGS; k++, share /= 2) {
    for (let i = 0; i < x.length; i++) x[i] = (from[i] as number) + share * (step[i] as number);
    const now = netEnergy(net, x);
    if (now <= energy + ARMIJO * share * slope) return now;
  }
  x.set(from);
  return undefined;
}
