import { createRequire } from "node:module";
import { bestOf, type FoldShape, hangFolds } from "../src/mechanics/index.ts";
import { type Figure, median, timed } from "./figure.ts";

/** What we use of ODEX (Hairer & Wanner), an extrapolation method for any system of differential equations. */
interface OdexSolver {
  absoluteTolerance: number;
  relativeTolerance: number;
  solve(f: (x: number, y: number[]) => number[], from: number, start: number[], to: number): { y: number[] };
}
const { Solver } = createRequire(import.meta.url)("odex") as { Solver: new (size: number) => OdexSolver };

/** λ, and the heights of one raise: well conditioned for shooting, which loses its digits as e^√λ grows. */
const WEIGHT = 10;
const GAPS = Array.from({ length: 40 }, (_, i) => 1.8 - 0.042 * i);
/** The reference values of the fold hold to this, in half arcs. */
const TOLERANCE = 1e-9;
/** Enough for 1e-6 against ODEX at its tolerance. */
const NODES = 80;
const ROUNDS = 15;

/** One fold between two hinges at forty heights by ours and by shooting with a general library: heights a second. */
export function foldVsBvp(): Figure {
  const ours: number[] = [];
  const peers: number[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    ours.push(timed(byOurs));
    peers.push(timed(byShooting));
  }
  const perSecond = (samples: number[]) => (1000 * GAPS.length) / median(samples);
  return {
    name: "fold.vs-bvp",
    value: perSecond(ours),
    unit: "heights/s",
    goal: 1000,
    better: "higher",
    peer: "shooting with odex",
    ratio: perSecond(ours) / perSecond(peers),
  };
}

/** The largest difference between the two in how far the fold stands out, in half arcs. */
export function foldVsBvpError(): Figure {
  const peers = byShooting();
  const off = byOurs().map((shape, i) =>
    Math.abs((shape.slopeRad[0] ?? Number.NaN) - (peers[i]?.[0] ?? Number.NaN)),
  );
  return {
    name: "fold.vs-bvp-error",
    value: Math.max(...off),
    unit: "rad",
    goal: 1e-6,
    better: "lower",
    peer: "shooting with odex",
  };
}

function byOurs(): FoldShape[] {
  return hangFolds({ arcMm: 2, weightNPerMm2: WEIGHT, rigidityNmm: 1 }, GAPS, NODES).map((solved) => {
    if (solved.kind !== "converged") throw new Error("not converged");
    return bestOf(solved);
  });
}

type Unknowns = [slope: number, up: number, side: number];

/** θ, θ′, x, y from the upper hinge; slope, V and H there are sought so that the strip ends at the lower one. */
function byShooting(): Unknowns[] {
  const first = hangFolds({ arcMm: 2, weightNPerMm2: WEIGHT, rigidityNmm: 1 }, GAPS.slice(0, 1)).map(
    bestOf,
  )[0];
  // Both begin from the same first height, a little off, and go on from height to height.
  let now: Unknowns = [
    (first?.slopeRad[0] ?? 0) + 1e-3,
    first?.upAtTopNPerMm ?? 0,
    first?.backwardAtTopNPerMm ?? 0,
  ];
  return GAPS.map((gap) => {
    now = newton(now, gap);
    return now;
  });
}

function newton(start: Unknowns, gap: number): Unknowns {
  let at = start;
  for (let step = 0; step < 20; step++) {
    const miss = missAt(at, gap);
    if (Math.max(...miss.map(Math.abs)) < TOLERANCE) return at;
    const columns = at.map((value, k) => {
      const nudge = 1e-6 * (1 + Math.abs(value));
      const moved = missAt(at.map((v, i) => (i === k ? v + nudge : v)) as Unknowns, gap);
      return moved.map((m, i) => (m - (miss[i] ?? 0)) / nudge);
    });
    const change = cramer(columns, miss);
    at = at.map((value, i) => value - (change[i] ?? 0)) as Unknowns;
  }
  throw new Error("shooting did not converge");
}

function missAt([slope, up, side]: Unknowns, gap: number): number[] {
  const solver = new Solver(4);
  solver.absoluteTolerance = TOLERANCE;
  solver.relativeTolerance = TOLERANCE;
  const rate = (s: number, [angle = 0, turn = 0]: number[]) => [
    turn,
    (up - WEIGHT * s) * Math.sin(angle) - side * Math.cos(angle),
    Math.sin(angle),
    Math.cos(angle),
  ];
  const [, turn = 0, x = 0, y = 0] = solver.solve(rate, 0, [slope, 0, 0, 0], 2).y;
  return [turn, x, y - gap];
}

function cramer(columns: number[][], right: number[]): number[] {
  const whole = determinant(columns);
  return columns.map((_, k) => determinant(columns.map((column, i) => (i === k ? right : column))) / whole);
}

function determinant([a = [], b = [], c = []]: number[][]): number {
  const at = (list: number[], i: number) => list[i] ?? 0;
  return (
    at(a, 0) * (at(b, 1) * at(c, 2) - at(b, 2) * at(c, 1)) -
    at(b, 0) * (at(a, 1) * at(c, 2) - at(a, 2) * at(c, 1)) +
    at(c, 0) * (at(a, 1) * at(b, 2) - at(a, 2) * at(b, 1))
  );
}
