import { solveDense } from "../solve/dense.ts";
import { largestOf } from "../solve/largest-of.ts";
import type { Solved } from "../solve/outcome.ts";
import { solveTridiagonal } from "../solve/tridiagonal.ts";
import { STRIP_REACH_RAD, STRIP_RESIDUAL, STRIP_STEPS, STRIP_TURN_RAD } from "../tolerances.ts";
import {
  copyState,
  deepestOf,
  depthPast,
  placesOf,
  type StripProblem,
  type StripState,
  springSoftness,
  turnBetween,
} from "./strip.ts";

/**
 * Newton's method on the strip's moment balance.
 *
 * Numerov's formula (Hairer, Nørsett & Wanner, Solving Ordinary Differential Equations I, §III.10) ties three
 * neighbouring slopes with an error of h⁶/240 · θ⁽⁶⁾; the hinges (θ′ = 0) use the same formula on one side with the
 * known f′ = −λ sin θ. Since θ′ = 0 at both hinges the plain trapezoid rule closes the shape to fourth order too. What
 * is left is a tridiagonal matrix bordered by the two hinge forces and by the forces of the planes, so one step costs a
 * fixed number of sines a node.
 *
 * A plane is a row of one-sided springs at the nodes that push with the square of their depth, as a nap does, and sink
 * by `PANE_SINK` under about the force that leans there. Plain springs make Newton swap the same two nodes for ever.
 */
export function hangStrip(
  problem: StripProblem,
  start: StripState,
  reach = STRIP_REACH_RAD,
): Solved<StripState> {
  const state = copyState(start);
  let residual = Number.POSITIVE_INFINITY;
  for (let iterations = 0; iterations <= STRIP_STEPS; iterations++) {
    const system = assemble(problem, state);
    residual = system.residual;
    if (residual <= STRIP_RESIDUAL) {
      // A shape far from its start is another equilibrium, as a rule one that would not stay.
      if (turnBetween(start.slope, state.slope) > reach)
        return { kind: "notConverged", best: start, iterations, residual };
      return { kind: "converged", value: state, iterations, residual };
    }
    if (!(residual < Number.POSITIVE_INFINITY) || !step(system, state)) break;
  }
  return { kind: "notConverged", best: state, iterations: STRIP_STEPS, residual };
}

interface System {
  lower: Float64Array;
  diagonal: Float64Array;
  upper: Float64Array;
  /** Moment balance of each node. */
  balance: Float64Array;
  /** Its change with each force: up, side, then each spring that is pressed. */
  byForce: Float64Array[];
  /** Where the far hinge and the pressed nodes are too far, then how soft each is. */
  misfit: Float64Array;
  softness: Float64Array;
  contact: Contact;
  sin: Float64Array;
  cos: Float64Array;
  residual: number;
}

function assemble(problem: StripProblem, state: StripState): System {
  const { slope } = state;
  const n = slope.length - 1;
  const sin = new Float64Array(n + 1);
  const cos = new Float64Array(n + 1);
  for (let i = 0; i <= n; i++) {
    sin[i] = Math.sin(slope[i] as number);
    cos[i] = Math.cos(slope[i] as number);
  }
  const contact = pressedNodes(problem, state);
  const inside = forcesInside(problem, state, contact);
  const system: System = {
    lower: new Float64Array(n + 1),
    diagonal: new Float64Array(n + 1),
    upper: new Float64Array(n + 1),
    balance: new Float64Array(n + 1),
    byForce: [],
    misfit: new Float64Array(2 + contact.nodes.length),
    softness: new Float64Array(2 + contact.nodes.length),
    contact,
    sin,
    cos,
    residual: 0,
  };
  addForceColumns(system, balanceNodes(system, problem, state, inside));
  holdEnds(system, problem, state);
  addMisfits(system, problem, contact, state);
  system.residual = Math.max(largestOf(system.balance), largestOf(system.misfit));
  return system;
}

interface Contact {
  nodes: number[];
  /** How far each pressed node is past its plane, and which way that pushes: towards the bulge and up. */
  depth: number[];
  out: number[];
  up: number[];
  softness: number;
}

function pressedNodes(problem: StripProblem, { slope }: StripState): Contact {
  const softness = springSoftness(problem);
  const contact: Contact = { nodes: [], depth: [], out: [], up: [], softness };
  if (problem.planes.length === 0) return contact;
  const { x, y } = placesOf(slope);
  for (let i = 1; i + 1 < slope.length; i++) {
    const by = deepestOf(problem, x[i] as number, y[i] as number);
    if (by === undefined) continue;
    contact.nodes.push(i);
    contact.depth.push(depthPast(by, problem.gap, x[i] as number, y[i] as number));
    contact.out.push(by.facing * Math.cos(by.tiltRad));
    contact.up.push(by.facing * Math.sin(by.tiltRad));
  }
  return contact;
}

/** Sideways force in each interval and upward force on each side of each node: every push changes both from there on. */
function forcesInside(
  { weight }: StripProblem,
  { slope, side, up, push }: StripState,
  { nodes, out, up: lift }: Contact,
): { side: Float64Array; up: Float64Array } {
  const n = slope.length - 1;
  const inside = { side: new Float64Array(n + 1), up: new Float64Array(n + 1) };
  let [left, held, k] = [side, up, 0];
  for (let i = 0; i <= n; i++) {
    if (nodes[k] === i) {
      left -= (push[i] as number) * (out[k] as number);
      held += (push[i] as number) * (lift[k] as number);
      k++;
    } else push[i] = 0;
    inside.side[i] = left;
    // What is inside the interval below a node; the weight of the node itself hangs on it.
    inside.up[i] = held - weight * (2 / n) * i;
  }
  return inside;
}

/** Change of each node's balance with a force in the interval before and in the one after it. */
interface ByForce {
  before: Float64Array;
  after: Float64Array;
}

/** Fills balance and its derivatives by slope; returns those by the two forces inside. */
function balanceNodes(
  { lower, diagonal, upper, balance, sin, cos }: System,
  { weight }: StripProblem,
  { slope }: StripState,
  inside: { side: Float64Array; up: Float64Array },
): { side: ByForce; up: ByForce } {
  const n = slope.length - 1;
  const step = 2 / n;
  const part = (step * step) / 12;
  const drop = weight * step;
  const side = { before: new Float64Array(n + 1), after: new Float64Array(n + 1) };
  const up = { before: new Float64Array(n + 1), after: new Float64Array(n + 1) };
  for (let i = 0; i <= n; i++) {
    const [s, c] = [sin[i] as number, cos[i] as number];
    let [row, own] = [0, 0];
    if (i > 0) {
      const [s0, c0, h] = [sin[i - 1] as number, cos[i - 1] as number, inside.side[i - 1] as number];
      const v0 = inside.up[i - 1] as number;
      const v = v0 - drop;
      row += (slope[i - 1] as number) - (slope[i] as number);
      row -= part * (v0 * s0 - h * c0 + 5 * (v * s - h * c));
      own -= 1 + 5 * part * (v * c + h * s);
      lower[i] = 1 - part * (v0 * c0 + h * s0);
      side.before[i] = part * (c0 + 5 * c);
      up.before[i] = -part * (s0 + 5 * s);
    }
    if (i < n) {
      const [s1, c1, h] = [sin[i + 1] as number, cos[i + 1] as number, inside.side[i] as number];
      const v = inside.up[i] as number;
      const v1 = v - drop;
      row += (slope[i + 1] as number) - (slope[i] as number);
      row -= part * (v1 * s1 - h * c1 + 5 * (v * s - h * c));
      own -= 1 + 5 * part * (v * c + h * s);
      upper[i] = 1 - part * (v1 * c1 + h * s1);
      side.after[i] = part * (c1 + 5 * c);
      up.after[i] = -part * (s1 + 5 * s);
    }
    // At a hinge the half formula lacks the slope of f, which is −λ sin θ there.
    const hinge = i === 0 ? part * drop : i === n ? -part * drop : 0;
    balance[i] = row + hinge * s;
    diagonal[i] = own + hinge * c;
  }
  return { side, up };
}

/** V and H act in every interval; a push lowers the sideways force of every interval after it and lifts the upward one. */
function addForceColumns(
  { byForce, contact, balance }: System,
  { side, up }: { side: ByForce; up: ByForce },
): void {
  const whole = ({ before, after }: ByForce) => before.map((value, i) => value + (after[i] as number));
  const [byUp, bySide] = [whole(up), whole(side)];
  byForce.push(byUp, bySide);
  contact.nodes.forEach((at, k) => {
    const [out, lift] = [contact.out[k] as number, contact.up[k] as number];
    const column = new Float64Array(balance.length);
    column[at] = lift * (up.after[at] as number) - out * (side.after[at] as number);
    for (let i = at + 1; i < column.length; i++) {
      column[i] = lift * (byUp[i] as number) - out * (bySide[i] as number);
    }
    byForce.push(column);
  });
}

/** A held end has its slope, and no balance of its own. */
function holdEnds(
  { balance, lower, diagonal, upper, byForce }: System,
  { held }: StripProblem,
  { slope }: StripState,
): void {
  const n = slope.length - 1;
  const ends: [number, number | undefined][] = [
    [0, held?.top],
    [n, held?.bottom],
  ];
  for (const [node, rad] of ends) {
    if (rad === undefined) continue;
    balance[node] = (slope[node] as number) - rad;
    diagonal[node] = 1;
    (node === 0 ? upper : lower)[node] = 0;
    for (const column of byForce) column[node] = 0;
  }
}

/**
 * Moments that hold the ends, θ′ at the top and at the bottom: what Numerov's half formula is short of there; nothing at a
 * hinge. With held ends the shape closes to second order only, since the trapezoid rule keeps its end terms.
 */
export function endMoments(problem: StripProblem, state: StripState): { top: number; bottom: number } {
  const { balance } = assemble({ ...problem, held: {} }, state);
  const n = state.slope.length - 1;
  const step = 2 / n;
  return { top: (balance[0] as number) / step, bottom: -(balance[n] as number) / step };
}

function addMisfits(
  { misfit, softness, sin, cos }: System,
  { gap }: StripProblem,
  contact: Contact,
  { push }: StripState,
): void {
  const n = sin.length - 1;
  const step = 2 / n;
  misfit[0] = step * (sum(sin) - ((sin[0] as number) + (sin[n] as number)) / 2);
  misfit[1] = step * (sum(cos) - ((cos[0] as number) + (cos[n] as number)) / 2) - gap;
  contact.nodes.forEach((node, k) => {
    const depth = contact.depth[k] as number;
    const rate = (2 * depth) / contact.softness;
    softness[2 + k] = 1 / rate;
    misfit[2 + k] = (push[node] as number) / rate - depth / 2;
  });
}

function sum(list: Float64Array): number {
  let total = 0;
  for (let i = 0; i < list.length; i++) total += list[i] as number;
  return total;
}

/** One damped Newton step by block elimination; false where a block is singular. */
function step(system: System, state: StripState): boolean {
  const { lower, diagonal, upper, balance, byForce, misfit, softness, contact } = system;
  const { slope } = state;
  const columns = [balance, ...byForce];
  if (!solveTridiagonal(lower, diagonal, upper, columns)) return false;
  const moved = columns.map((column) => shifts(system, slope, column));
  const size = misfit.length;
  const rows: Float64Array[] = [];
  for (let r = 0; r < size; r++) {
    const row = new Float64Array(size);
    for (let c = 0; c < size; c++) row[c] = -((moved[c + 1] as Float64Array)[r] as number);
    row[r] = (row[r] as number) + (softness[r] as number);
    rows.push(row);
  }
  const forces = misfit.map((value, r) => ((moved[0] as Float64Array)[r] as number) - value);
  if (!solveDense(rows, forces)) return false;
  // The balance column is done with, so it becomes the turn of each node.
  const turn = balance;
  for (let i = 0; i < turn.length; i++) turn[i] = -(turn[i] as number);
  for (let k = 0; k < size; k++) {
    const [column, force] = [byForce[k] as Float64Array, forces[k] as number];
    for (let i = 0; i < turn.length; i++) turn[i] = (turn[i] as number) - force * (column[i] as number);
  }
  const largest = largestOf(turn);
  if (!(largest < Number.POSITIVE_INFINITY)) return false;
  const share = Math.min(1, STRIP_TURN_RAD / largest);
  for (let i = 0; i < turn.length; i++) slope[i] = (slope[i] as number) + share * (turn[i] as number);
  state.up += share * (forces[0] as number);
  state.side += share * (forces[1] as number);
  contact.nodes.forEach((node, k) => {
    state.push[node] = (state.push[node] as number) + share * (forces[2 + k] as number);
  });
  return true;
}

/** How far hinge and pressed nodes go (x and y of the far hinge, then each pressed node off its plane) when the slopes turn by `turn`. */
function shifts(
  { sin, cos, contact, misfit }: System,
  slope: Float64Array,
  turn: Float64Array,
): Float64Array {
  const n = slope.length - 1;
  const step = 2 / n;
  const result = new Float64Array(misfit.length);
  let [x, y, k] = [0, 0, 0];
  for (let i = 0; i <= n; i++) {
    const end = i === 0 || i === n ? 0.5 : 1;
    const dx = (cos[i] as number) * (turn[i] as number);
    const dy = -(sin[i] as number) * (turn[i] as number);
    if (contact.nodes[k] === i) {
      const bent = ((slope[i + 1] as number) - (slope[i - 1] as number)) / 24;
      const bends = ((turn[i + 1] as number) - (turn[i - 1] as number)) / 24;
      const nodeX = x + step * (dx / 2 - (cos[i] as number) * bends - dy * bent);
      const nodeY = y + step * (dy / 2 + (sin[i] as number) * bends + dx * bent);
      result[2 + k] = (contact.out[k] as number) * nodeX - (contact.up[k] as number) * nodeY;
      k++;
    }
    x += end * step * dx;
    y += end * step * dy;
  }
  result[0] = x;
  result[1] = y;
  return result;
}
