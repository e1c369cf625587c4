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

export interface BeamPlace {
  atMm: number;
  value: number;
}

/** A beam with everything known; deflection down and reaction up are positive, moment positive where it sags. */
export interface SolvedBeam {
  reactionsN: number[];
  deflectionMm(atMm: number): number;
  momentNmm(atMm: number): number;
  /** Largest deflection either way. */
  largestDeflection: BeamPlace;
  /** Largest moment either way. */
  largestMoment: BeamPlace;
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
  const rise = (atMm: number) => known.bent((atMm - beam.fromMm) / length, 1);
  const shear = (atMm: number) => known.bent((atMm - beam.fromMm) / length, 3);
  return {
    ...solved,
    // Searched for only where it is asked for: whoever tries many columns looks at a few places alone.
    get largestDeflection() {
      return largest(beam, solved.deflectionMm, rise);
    },
    get largestMoment() {
      return largest(beam, solved.momentNmm, shear);
    },
  };
}

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
  const loaded: Bent = (x, order) =>
    evens.reduce((sum, { from, to, load }) => sum + load * stretch(x - from, x - to, 4 - order), 0) +
    loads.reduce((sum, { at, load }) => sum + load * macaulay(x - at, 3 - order), 0);
  const n = supports.length;
  const rows = supports.map((x) => Float64Array.from([...supports.map((r) => -macaulay(x - r, 3)), x, 1]));
  rows.push(Float64Array.from([...supports.map(() => 1), 0, 0]));
  rows.push(Float64Array.from([...supports, 0, 0]));
  const right = Float64Array.from([
    ...supports.map((x) => -loaded(x, 0)),
    [...loads, ...evens.map(whole)].reduce((sum, { load }) => sum + load, 0),
    [...loads, ...evens.map(whole)].reduce((sum, { at, load }) => sum + load * at, 0),
  ]);
  if (!solveDense(rows, right)) throw new Error(`invalid supportsMm: ${supportsMm.join(", ")}`);
  const reactions = Array.from(right.slice(0, n));
  const [slope, height] = [right[n] as number, right[n + 1] as number];
  const bent: Bent = (x, order) => {
    const straight = order === 0 ? slope * x + height : order === 1 ? slope : 0;
    const held = reactions.reduce(
      (sum, r, i) => sum + r * macaulay(x - (supports[i] as number), 3 - order),
      0,
    );
    return loaded(x, order) - held + straight;
  };
  return { reactions, bent };
}

/** An even load as one force at its middle. */
function whole({ from, to, load }: { from: number; to: number; load: number }): { at: number; load: number } {
  return { at: (from + to) / 2, load: load * (to - from) };
}

/** An even load from one place on, less the same from where it ends. */
function stretch(fromStart: number, fromEnd: number, power: number): number {
  return macaulay(fromStart, power) - macaulay(fromEnd, power);
}

/** ⟨x⟩ⁿ / n!, nothing left of its place. */
function macaulay(x: number, power: number): number {
  if (x < 0) return 0;
  let result = 1;
  for (let i = 1; i <= power; i++) result *= x / i;
  return result;
}

/** Between two neighbouring loads or supports the rate changes sign a few times at most; this many looks find each. */
const LOOKS = 8;

function largest(beam: LoadedBeam, value: (at: number) => number, rate: (at: number) => number): BeamPlace {
  const marks = [
    beam.fromMm,
    ...beam.supportsMm,
    ...beam.points.map(({ atMm }) => atMm),
    ...beam.spread.flatMap((one) => [one.fromMm, one.toMm]),
    beam.toMm,
  ];
  marks.sort((a, b) => a - b);
  const places = [...marks];
  for (let i = 0; i + 1 < marks.length; i++) {
    const [from, to] = [marks[i] as number, marks[i + 1] as number];
    if (to <= from) continue;
    let left = rate(from);
    for (let look = 0; look < LOOKS; look++) {
      const end = from + ((to - from) * (look + 1)) / LOOKS;
      const right = rate(end);
      if (left * right < 0) {
        const root = findRoot(rate, from + ((to - from) * look) / LOOKS, end);
        if (root.kind === "converged") places.push(root.value);
      } else if (right === 0) places.push(end);
      left = right;
    }
  }
  return places
    .map((atMm) => ({ atMm, value: value(atMm) }))
    .reduce((best, one) => (Math.abs(one.value) > Math.abs(best.value) ? one : best));
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
