import { solveDense } from "../solve/dense.ts";
import { findRoot } from "../solve/find-root.ts";

/** A straight beam of one section on two or more rigid supports at one level. */
export interface LoadedBeam {
  supportsMm: readonly number[];
  /** Ends, mm; they may overhang the outer supports. */
  fromMm: number;
  toMm: number;
  /** Even loads, each over its own stretch. */
  spread: readonly { fromMm: number; toMm: number; loadNPerMm: number }[];
  points: readonly { atMm: number; loadN: number }[];
  /** E·I, N·mm². */
  stiffnessNmm2: number;
}

export interface BeamPoint {
  atMm: number;
  value: number;
}

/** A beam with everything known; deflection down and reaction up are positive, moment positive where it sags. */
export interface SolvedBeam {
  reactionsN: number[];
  deflectionMm(atMm: number): number;
  momentNmm(atMm: number): number;
  /** Largest deflection either way. */
  largestDeflection: BeamPoint;
  /** Largest moment either way. */
  largestMoment: BeamPoint;
}

/**
 * Macaulay's method: EI·v = Σ P⟨x − p⟩³/6 + q⟨x − a⟩⁴/24 − Σ R⟨x − r⟩³/6 + C₁x + C₂, with v = 0 over each support and both
 * balances (Timoshenko, Strength of Materials I, ch. 5). Small deflections, no shear: exact to rounding for up to some
 * tens of supports. Deflections of wood from handbook moduli include shear already.
 */
export function solveBeam(beam: LoadedBeam): SolvedBeam {
  demandSupports(beam);
  const { fromMm, toMm, stiffnessNmm2 } = beam;
  const length = toMm - fromMm;
  const known = solveReactions(beam, length);
  const scale = length ** 3 / stiffnessNmm2;
  const deflectionMm = (atMm: number) => {
    const x = (atMm - fromMm) / length;
    return scale * (deflectedBy(known.jumps, x) + known.slope * x + known.height);
  };
  const momentNmm = (atMm: number) => -length * bentBy(known.jumps, (atMm - fromMm) / length);
  // Looked for only where it is asked for: whoever tries many columns looks at a few places alone.
  let extremes: Extremes | undefined;
  const look = () => (extremes ??= extremesOf(known));
  const point = (at: number, value: (atMm: number) => number): BeamPoint => {
    const atMm = fromMm + at * length;
    return { atMm, value: value(atMm) };
  };
  return {
    reactionsN: known.reactions,
    deflectionMm,
    momentNmm,
    get largestDeflection() {
      return point(look().deflectionAt, deflectionMm);
    },
    get largestMoment() {
      return point(look().momentAt, momentNmm);
    },
  };
}

/** Something that begins at a place on a beam of length 1: a force down, or an even load. */
interface Jump {
  at: number;
  force: number;
  even: number;
}

/** A beam of length 1 and stiffness 1, solved. */
interface Known {
  reactions: number[];
  /** From left to right. */
  jumps: Jump[];
  /** At its left end. */
  height: number;
  slope: number;
}

/** In units of the length of the beam, so that the matrix keeps its digits. */
function solveReactions({ supportsMm, fromMm, spread, points }: LoadedBeam, length: number): Known {
  const supports = supportsMm.map((at) => (at - fromMm) / length);
  const jumps: Jump[] = points.map(({ atMm, loadN }) => ({
    at: (atMm - fromMm) / length,
    force: loadN,
    even: 0,
  }));
  for (const one of spread) {
    const even = one.loadNPerMm * length;
    jumps.push({ at: (one.fromMm - fromMm) / length, force: 0, even });
    jumps.push({ at: (one.toMm - fromMm) / length, force: 0, even: -even });
  }
  let force = 0;
  let turn = 0;
  for (const jump of jumps) {
    // What begins at a place goes on to the end.
    const on = 1 - jump.at;
    force += jump.force + jump.even * on;
    turn += jump.force * jump.at + jump.even * on * (jump.at + on / 2);
  }
  const solved =
    supports.length === 2
      ? onTwo(supports as [number, number], jumps, force, turn)
      : onMany(supports, jumps, force, turn);
  if (solved === undefined) throw new Error(`invalid supportsMm: ${supportsMm.join(", ")}`);
  supports.forEach((at, i) => {
    jumps.push({ at, force: -(solved.reactions[i] as number), even: 0 });
  });
  jumps.sort((a, b) => a.at - b.at);
  return { ...solved, jumps };
}

type Held = Omit<Known, "jumps">;

/** Both balances alone give the reactions. */
function onTwo([a, b]: [number, number], jumps: readonly Jump[], force: number, turn: number): Held {
  const right = (turn - a * force) / (b - a);
  const left = force - right;
  const atA = deflectedBy(jumps, a);
  const atB = deflectedBy(jumps, b) - (left * (b - a) ** 3) / 6;
  const slope = (atA - atB) / (b - a);
  return { reactions: [left, right], slope, height: -atA - slope * a };
}

/** Both balances, and no deflection over any support. */
function onMany(
  supports: readonly number[],
  jumps: readonly Jump[],
  force: number,
  turn: number,
): Held | undefined {
  const n = supports.length;
  const rows: number[][] = [];
  const right: number[] = [];
  for (const x of supports) {
    const row: number[] = [];
    for (const at of supports) row.push(x > at ? -((x - at) ** 3) / 6 : 0);
    row.push(x, 1);
    rows.push(row);
    right.push(-deflectedBy(jumps, x));
  }
  rows.push([...supports.map(() => 1), 0, 0], [...supports, 0, 0]);
  right.push(force, turn);
  if (!solveDense(rows, right)) return undefined;
  return { reactions: right.slice(0, n), slope: right[n] as number, height: right[n + 1] as number };
}

/** Σ P⟨x − p⟩³/6 + q⟨x − a⟩⁴/24 */
function deflectedBy(jumps: readonly Jump[], x: number): number {
  let sum = 0;
  for (const { at, force, even } of jumps) {
    const on = x - at;
    if (on > 0) sum += ((force + (even * on) / 4) * on * on * on) / 6;
  }
  return sum;
}

/** Σ P⟨x − p⟩ + q⟨x − a⟩²/2 */
function bentBy(jumps: readonly Jump[], x: number): number {
  let sum = 0;
  for (const { at, force, even } of jumps) {
    const on = x - at;
    if (on > 0) sum += (force + (even * on) / 2) * on;
  }
  return sum;
}

/** Places along a beam of length 1. */
interface Extremes {
  deflectionAt: number;
  momentAt: number;
}

/** Of two places as good to rounding, as on a beam that is its own mirror, the left one counts. */
const TELL_APART = 1 + 1e-10;

/**
 * Between two neighbours of loads, supports and ends the deflection is one polynomial of the fourth degree, known from
 * what it and its derivatives are at the left one: its slope is a cubic, its moment a parabola. Each is largest at an
 * end or where its own derivative is 0.
 */
function extremesOf({ jumps, height, slope }: Known): Extremes {
  let bend = height;
  let turn = slope;
  let curve = 0;
  let force = 0;
  let even = 0;
  let at = 0;
  let deflectionAt = 0;
  let momentAt = 0;
  let most = Math.abs(bend);
  let mostCurve = 0;
  for (let i = 0; i <= jumps.length; i++) {
    const jump = jumps[i];
    const end = jump?.at ?? 1;
    const span = end - at;
    if (span > 0) {
      const roots = rootsOfSlope(turn, curve, force, even, span);
      for (let k = 0; k <= roots.length; k++) {
        const s = roots[k] ?? span;
        const size = Math.abs(bend + s * (turn + (s / 2) * (curve + (s / 3) * (force + (s / 4) * even))));
        if (size > most * TELL_APART) {
          most = size;
          deflectionAt = at + s;
        }
      }
      const peak = -force / even;
      const sizeAtPeak = peak > 0 && peak < span ? Math.abs(curve + (peak / 2) * force) : 0;
      if (sizeAtPeak > mostCurve * TELL_APART) {
        mostCurve = sizeAtPeak;
        momentAt = at + peak;
      }
      bend += span * (turn + (span / 2) * (curve + (span / 3) * (force + (span / 4) * even)));
      turn += span * (curve + (span / 2) * (force + (span / 3) * even));
      curve += span * (force + (span / 2) * even);
      force += span * even;
      at = end;
      if (Math.abs(curve) > mostCurve * TELL_APART) {
        mostCurve = Math.abs(curve);
        momentAt = at;
      }
    }
    force += jump?.force ?? 0;
    even += jump?.even ?? 0;
  }
  return { deflectionAt, momentAt };
}

/** Where turn + curve·s + force·s²/2 + even·s³/6 is 0 within a span: between its own turning points it has one root or none. */
function rootsOfSlope(turn: number, curve: number, force: number, even: number, span: number): number[] {
  const slope = (s: number) => turn + s * (curve + (s / 2) * (force + (s / 3) * even));
  const roots: number[] = [];
  const places = turningPoints(curve, force, even, span);
  let from = 0;
  let before = turn;
  for (let i = 0; i <= places.length; i++) {
    const to = places[i] ?? span;
    const after = slope(to);
    if (before * after < 0) {
      const root = findRoot(slope, from, to);
      if (root.kind === "converged") roots.push(root.value);
    } else if (after === 0) roots.push(to);
    from = to;
    before = after;
  }
  return roots;
}

/** Where curve + force·s + even·s²/2 is 0 within a span, in order. */
function turningPoints(curve: number, force: number, even: number, span: number): number[] {
  const inside = force ** 2 - 2 * curve * even;
  if (inside < 0) return [];
  // The form that takes no difference of two near numbers; where one root is at infinity it falls outside the span.
  const q = -(force + (force < 0 ? -1 : 1) * Math.sqrt(inside));
  const a = q / even;
  const b = (2 * curve) / q;
  const first = Math.min(a, b);
  const second = Math.max(a, b);
  const places: number[] = [];
  if (first > 0 && first < span) places.push(first);
  if (second > 0 && second < span) places.push(second);
  return places;
}

function demandSupports({ supportsMm, fromMm, toMm, points, spread, stiffnessNmm2 }: LoadedBeam): void {
  const rising = supportsMm.every((at, i) => i === 0 || at > (supportsMm[i - 1] as number));
  const inside = (at: number) => at >= fromMm && at <= toMm;
  if (supportsMm.length < 2 || !rising || !supportsMm.every(inside)) {
    throw new Error(`invalid supportsMm: ${supportsMm.join(", ")} on a beam from ${fromMm} to ${toMm}`);
  }
  if (!points.every(({ atMm }) => inside(atMm))) throw new Error("invalid points: past an end of the beam");
  if (!spread.every((one) => inside(one.fromMm) && inside(one.toMm) && one.fromMm <= one.toMm)) {
    throw new Error("invalid spread: past an end of the beam");
  }
  if (!(stiffnessNmm2 > 0)) throw new Error(`invalid stiffnessNmm2: ${stiffnessNmm2}`);
}
