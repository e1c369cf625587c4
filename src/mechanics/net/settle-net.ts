import { conjugateGradients, dot } from "../solve/conjugate-gradients.ts";
import { factorEnvelope, solveEnvelope } from "../solve/envelope.ts";
import type { Solved } from "../solve/outcome.ts";
import type { ClothNet } from "./net.ts";
import { netEnergy } from "./net-energy.ts";
import { eachContactNode, fillMatrix, type NetPattern, pressedContacts } from "./net-matrix.ts";

export interface SettleOptions {
  /** Steps at most. */
  most: number;
  /** Settled when the next step would let the whole load sink by no more than this on the mean, mm. */
  sinkMm: number;
  /** No node moves farther in one step, mm. */
  reachMm: number;
  /** Told the energy after every step, N·mm. */
  onStep?: (energy: number) => void;
}

/** A step must win this share of what its slope promises (Nocedal & Wright, Numerical Optimization, §3.1). */
const ARMIJO = 1e-4;
const HALVINGS = 24;
/** Contacts are solved this well in each step: better steps are not worth their price. */
const CONTACT_SHARE = 0.05;
const CONTACT_STEPS = 16;

/**
 * The same net with threads of a share of their stiffness. Soft threads let a net turn that has far to go, stiff ones then
 * only draw it to length: stiff from the start, each step that turns a thread stretches it and is cut to nothing.
 */
export function softened(net: ClothNet, share: number): ClothNet {
  return {
    ...net,
    threads: { ...net.threads, stiffness: net.threads.stiffness.map((whole) => whole * share) },
  };
}

/**
 * Where the net comes to rest from a shape near it: Newton’s method on its energy, halving every step that would raise it.
 * Deterministic; the energy never rises. `residual` is the sink that is left, mm.
 */
export function settleNet(
  net: ClothNet,
  pattern: NetPattern,
  start: Float64Array,
  { most, sinkMm, reachMm, onStep }: SettleOptions,
): Solved<Float64Array> {
  const x = start.slice();
  const gradient = new Float64Array(x.length);
  const load = net.loadN.reduce((sum, newton) => sum + Math.abs(newton), 0) || 1;
  let sink = Number.POSITIVE_INFINITY;
  const stuck = (iterations: number): Solved<Float64Array> => ({
    ...{ kind: "notConverged", best: x, iterations, residual: sink },
  });
  for (let iterations = 0; iterations < most; iterations++) {
    gradient.fill(0);
    const energy = netEnergy(net, x, gradient);
    const step = newtonStep(net, pattern, x, gradient);
    if (step === undefined) return stuck(iterations);
    const slope = dot(gradient, step);
    sink = -slope / (2 * load);
    if (sink <= sinkMm) return { kind: "converged", value: x, iterations, residual: sink };
    const share = Math.min(1, reachMm / longest(step));
    for (let i = 0; i < step.length; i++) step[i] = (step[i] as number) * share;
    const won = searchAlong(net, x, step, energy, slope * share);
    if (won === undefined) return stuck(iterations);
    onStep?.(won);
  }
  return stuck(most);
}

/** The step of Newton’s method from here; undefined where the matrix cannot be made positive. */
function newtonStep(net: ClothNet, pattern: NetPattern, x: Float64Array, gradient: Float64Array) {
  const { row, rows, matrix } = pattern;
  fillMatrix(net, pattern, x);
  const load = net.loadN.reduce((sum, newton) => sum + Math.abs(newton), 0);
  if (!factored(matrix, load / net.nodeCount)) return undefined;
  const right = new Float64Array(rows);
  for (let i = 0; i < row.length; i++)
    if ((row[i] as number) >= 0) right[row[i] as number] = -(gradient[i] as number);
  const beyond = contactsBeyond(net, pattern, x);
  if (beyond === undefined) solveEnvelope(matrix, right);
  const solution =
    beyond === undefined
      ? right
      : conjugateGradients(
          right,
          { solve: (r) => solveEnvelope(matrix, r), addBeyond: beyond },
          { share: CONTACT_SHARE, most: CONTACT_STEPS },
        );
  const step = new Float64Array(row.length);
  for (let i = 0; i < row.length; i++)
    if ((row[i] as number) >= 0) step[i] = solution[row[i] as number] as number;
  return step;
}

/**
 * What contacts of cloth on cloth add to the matrix beyond its envelope, where each of their nodes was stiffened alone;
 * undefined where none is pressed.
 */
function contactsBeyond(net: ClothNet, { row }: NetPattern, x: Float64Array) {
  const pressed = pressedContacts(net, x).flatMap(({ at, slope }) => {
    if ((net.contacts.nodes[3 * at + 1] as number) < 0) return [];
    const rows: number[] = [];
    const weights: number[] = [];
    eachContactNode(net, at, (i, weight) => {
      const r = row[i] as number;
      if (r < 0) return;
      rows.push(r);
      weights.push(weight);
    });
    return [{ slope, rows, weights }];
  });
  if (pressed.length === 0) return undefined;
  return (v: Float64Array, sum: Float64Array) => {
    for (const { slope, rows, weights } of pressed) {
      let depth = 0;
      for (let i = 0; i < rows.length; i++)
        depth += (weights[i] as number) * (v[rows[i] as number] as number);
      for (let i = 0; i < rows.length; i++) {
        const r = rows[i] as number;
        const weight = weights[i] as number;
        sum[r] = (sum[r] as number) + slope * (weight * depth - 2 * Math.abs(weight) * (v[r] as number));
      }
    }
  };
}

/** Springs to where each node is, by turns: too weak to slow a step, yet what is slack altogether has a place then. */
const TIES = [1e-4, 1e-2, 1];

/** The factor in place of the matrix; false where that is not positive definite. `loadN` is that of a mean node. */
function factored(matrix: NetPattern["matrix"], loadN: number): boolean {
  const { size, start, values } = matrix;
  const bare = values.slice();
  return TIES.some((tie, turn) => {
    if (turn > 0) values.set(bare);
    for (let i = 0; i < size; i++) {
      const at = (start[i] as number) + i;
      values[at] = (values[at] as number) + tie * loadN;
    }
    return factorEnvelope(matrix);
  });
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
