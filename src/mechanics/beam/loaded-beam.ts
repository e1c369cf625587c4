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
  const length = beam.toMm - beam.fromMm;
  const known = solveReactions(beam, length);
  const scale = length ** 3 / beam.stiffnessNmm2;
  const solved = {
    reactionsN: known.reactions,
    deflectionMm: (atMm: number) => scale * known.bent((atMm - beam.fromMm) / length, 0),
    momentNmm: (atMm: number) => -length * known.bent((atMm - beam.fromMm) / length, 2),
  };
  return {
    ...solved,
    // Searched for only where it is asked for: whoever tries many columns looks at a few places alone.
    get largestDeflection() {
      const slope = (atMm: number) => known.bent((atMm - beam.fromMm) / length, 1);
      return largestDeflection(beam, solved.deflectionMm, slope);
    },
    get largestMoment() {
      const shear = (atMm: number) => -known.bent((atMm - beam.fromMm) / length, 3);
      return largestMoment(beam, solved.momentNmm, shear);
    },
  };
}

/** Of a place on the beam, mm. */
type Along = (atMm: number) => number;
type Bent = (x: number, order: 0 | 1 | 2 | 3) => number;

/** In units of the length of the beam, so that the matrix keeps its digits. */
function solveReactions(beam: LoadedBeam, length: number): { reactions: number[]; bent: Bent } {
  const { supportsMm, fromMm, spread, points } = beam;
  const supports = supportsMm.map((at) => (at - fromMm) / length);
  const loads = points.map(({ atMm, loadN }) => ({ at: (atMm - fromMm) / length, load: loadN }));
  const evens = spread.map((one) => ({
    from: (one.fromMm - fromMm) / length,
    to: (one.toMm - fromMm) / length,
    load: one.loadNPerMm * length,
  }));
  // Plain loops: a search for the largest sag asks this some hundred times.
  const loaded: Bent = (x, order) => {
    let [even, single] = [0, 0];
    for (const { from, to, load } of evens) {
      even += load * (macaulay(x - from, 4 - order) - macaulay(x - to, 4 - order));
    }
    for (const { at, load } of loads) single += load * macaulay(x - at, 3 - order);
    return even + single;
  };
  const n = supports.length;
  const rows = Array.from({ length: n + 2 }, () => new Float64Array(n + 2));
  const right = new Float64Array(n + 2);
  const [force, turn] = [rows[n] as Float64Array, rows[n + 1] as Float64Array];
  for (let i = 0; i < n; i++) {
    const x = supports[i] as number;
    const row = rows[i] as Float64Array;
    for (let k = 0; k < i; k++) row[k] = -macaulay(x - (supports[k] as number), 3);
    row[n] = x;
    row[n + 1] = 1;
    right[i] = -loaded(x, 0);
    force[i] = 1;
    turn[i] = x;
  }
  for (const { at, load } of [...loads, ...evens.map(whole)]) {
    right[n] = (right[n] as number) + load;
    right[n + 1] = (right[n + 1] as number) + load * at;
  }
  if (!solveDense(rows, right)) throw new Error(`invalid supportsMm: ${supportsMm.join(", ")}`);
  const reactions = Array.from(right.slice(0, n));
  const [slope, height] = [right[n] as number, right[n + 1] as number];
  const bent: Bent = (x, order) => {
    const straight = order === 0 ? slope * x + height : order === 1 ? slope : 0;
    let held = 0;
    for (let i = 0; i < n; i++) {
      held += (reactions[i] as number) * macaulay(x - (supports[i] as number), 3 - order);
    }
    return loaded(x, order) - held + straight;
  };
  return { reactions, bent };
}

/** An even load as one force at its middle. */
function whole({ from, to, load }: { from: number; to: number; load: number }): { at: number; load: number } {
  return { at: (from + to) / 2, load: load * (to - from) };
}

/** ⟨x⟩ⁿ / n!, nothing left of its place. */
function macaulay(x: number, power: number): number {
  if (x < 0) return 0;
  let result = 1;
  for (let i = 1; i <= power; i++) result *= x / i;
  return result;
}

/** Ends, supports and loads in order: between two neighbours deflection is one polynomial, and moment a parabola. */
function marksOf({ fromMm, toMm, supportsMm, points, spread }: LoadedBeam): number[] {
  const marks = [fromMm, ...supportsMm, toMm];
  for (const { atMm } of points) marks.push(atMm);
  for (const one of spread) marks.push(one.fromMm, one.toMm);
  return marks.sort((a, b) => a - b);
}

/** Between two marks the slope changes sign a few times at most; this many looks find each. */
const LOOKS = 8;

function largestDeflection(beam: LoadedBeam, value: Along, slope: Along): BeamPoint {
  const marks = marksOf(beam);
  let best = placeAt(value, beam.fromMm);
  for (let i = 1; i < marks.length; i++) {
    const [from, to] = [marks[i - 1] as number, marks[i] as number];
    best = larger(best, placeAt(value, to));
    if (to <= from) continue;
    let left = slope(from);
    for (let look = 0; look < LOOKS; look++) {
      const end = from + ((to - from) * (look + 1)) / LOOKS;
      const right = slope(end);
      if (left * right < 0) {
        const root = findRoot(slope, from + ((to - from) * look) / LOOKS, end);
        if (root.kind === "converged") best = larger(best, placeAt(value, root.value));
      } else if (right === 0) best = larger(best, placeAt(value, end));
      left = right;
    }
  }
  return best;
}

/** A parabola follows from the moments at both its ends and the shear at its beginning. */
function largestMoment(beam: LoadedBeam, value: Along, shear: Along): BeamPoint {
  const marks = marksOf(beam);
  let best = placeAt(value, beam.fromMm);
  let before = best;
  for (let i = 1; i < marks.length; i++) {
    const now = placeAt(value, marks[i] as number);
    const spanMm = now.atMm - before.atMm;
    if (spanMm > 0) {
      const rise = shear(before.atMm);
      const peak = before.atMm - (rise * spanMm ** 2) / (2 * (now.value - before.value - rise * spanMm));
      if (peak > before.atMm && peak < now.atMm) best = larger(best, placeAt(value, peak));
    }
    best = larger(best, now);
    before = now;
  }
  return best;
}

function placeAt(value: Along, atMm: number): BeamPoint {
  return { atMm, value: value(atMm) };
}

function larger(best: BeamPoint, one: BeamPoint): BeamPoint {
  return Math.abs(one.value) > Math.abs(best.value) ? one : best;
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
