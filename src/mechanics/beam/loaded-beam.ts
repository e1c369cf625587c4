import { findRoot } from "../solve/find-root.ts";
import { threeMoments } from "../three-moments.ts";

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
 * The three-moment equation (Clapeyron) over the inner supports, with the end slopes that the loads of each bay alone would
 * give it; from each support on the deflection is EI·v = v′x + v″x²/2 + v‴x³/6 + q x⁴/24 and what begins on the way
 * (Timoshenko, Strength of Materials I, ch. 5 and 7). Small deflections, no shear: exact to rounding for any number of
 * supports. Deflections of wood from handbook moduli include shear already.
 *
 * @throws where supports or loads lie past an end, supports are fewer than two or out of order, or nothing is stiff: a bug
 */
export function solveBeam(beam: LoadedBeam): SolvedBeam {
  demandSupports(beam);
  const { fromMm, toMm, stiffnessNmm2 } = beam;
  const length = toMm - fromMm;
  const { reactions, pieces } = piecesOf(beam, length);
  const scale = length ** 3 / stiffnessNmm2;
  const deflectionMm = (atMm: number) => {
    const at = (atMm - fromMm) / length;
    const piece = pieceAt(pieces, at);
    return scale * bendOf(piece, at - piece.at);
  };
  const momentNmm = (atMm: number) => {
    const at = (atMm - fromMm) / length;
    const { at: from, curve, force, even } = pieceAt(pieces, at);
    return -length * (curve + (at - from) * (force + ((at - from) / 2) * even));
  };
  // Looked for only where it is asked for: whoever tries many columns looks at a few places alone.
  let extremes: Extremes | undefined;
  const look = () => (extremes ??= extremesOf(pieces));
  const point = (at: number, value: (atMm: number) => number): BeamPoint => {
    const atMm = fromMm + at * length;
    return { atMm, value: value(atMm) };
  };
  return {
    reactionsN: reactions,
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

/**
 * A stretch of a beam of length 1 and stiffness 1, up to the next one: the deflection and its derivatives at its left
 * end. The second is the moment and the third the shear, both turned round; the fourth is the load on it.
 */
interface Piece {
  at: number;
  bend: number;
  turn: number;
  curve: number;
  force: number;
  even: number;
}

function bendOf({ bend, turn, curve, force, even }: Piece, s: number): number {
  return bend + s * (turn + (s / 2) * (curve + (s / 3) * (force + (s / 4) * even)));
}

function pieceAt(pieces: readonly Piece[], at: number): Piece {
  let i = pieces.length - 1;
  while (i > 0 && (pieces[i] as Piece).at > at) i--;
  return pieces[i] as Piece;
}

/** Something that begins at a place: a force down, or an even load. */
interface Jump {
  at: number;
  force: number;
  even: number;
}

/** In units of the length of the beam. */
function piecesOf(
  { supportsMm, fromMm, spread, points }: LoadedBeam,
  length: number,
): { reactions: number[]; pieces: Piece[] } {
  const supports = supportsMm.map((at) => (at - fromMm) / length);
  const jumps: Jump[] = [];
  for (const { atMm, loadN } of points) jumps.push({ at: (atMm - fromMm) / length, force: loadN, even: 0 });
  for (const one of spread) {
    const even = one.loadNPerMm * length;
    jumps.push({ at: (one.fromMm - fromMm) / length, force: 0, even });
    jumps.push({ at: (one.toMm - fromMm) / length, force: 0, even: -even });
  }
  jumps.sort((a, b) => a.at - b.at);
  const bays: Bay[] = [];
  let [next, even] = [0, 0];
  let from = 0;
  for (let i = 0; i <= supports.length; i++) {
    const to = supports[i] ?? 1;
    const bay = loadedBay(from, to, even);
    // What begins on the last support or at the end of the beam still loads it.
    for (let jump = jumps[next]; jump && (jump.at < to || i === supports.length); jump = jumps[++next]) {
      addJump(bay, jump);
      even += jump.even;
    }
    bays.push(bay);
    from = to;
  }
  const moments = momentsOver(bays);
  return {
    reactions: reactionsOf(bays, moments),
    pieces: bays.flatMap((bay, i) => bent(bay, i, bays, moments)),
  };
}

/** What lies between two neighbouring supports, or between the outer ones and the ends of the beam. */
interface Bay {
  from: number;
  to: number;
  /** Load on its left end, and what begins in it. */
  even: number;
  jumps: Jump[];
  /** All of its load, and that times how far it lies from the left end. */
  load: number;
  turning: number;
  /** Slopes of its ends, down into the bay, were it a beam of its own on two supports. */
  leftSlope: number;
  rightSlope: number;
}

function loadedBay(from: number, to: number, even: number): Bay {
  const span = to - from;
  const slope = (even * span ** 3) / 24;
  const load = even * span;
  return {
    ...{ from, to, even, jumps: [], load, turning: (load * span) / 2 },
    ...{ leftSlope: slope, rightSlope: slope },
  };
}

/** A load that begins at b from the right end, a from the left: P·a·b·(L + b)/6L and q·b²(2L² − b²)/24L at the left end. */
function addJump(bay: Bay, jump: Jump): void {
  const { at, force, even } = jump;
  const span = bay.to - bay.from;
  const [a, b] = [at - bay.from, bay.to - at];
  bay.jumps.push(jump);
  bay.load += force + even * b;
  bay.turning += force * a + even * b * (a + b / 2);
  if (!(span > 0)) return;
  bay.leftSlope +=
    (force * a * b * (span + b)) / (6 * span) + (even * b ** 2 * (2 * span ** 2 - b ** 2)) / (24 * span);
  bay.rightSlope +=
    (force * a * b * (span + a)) / (6 * span) + (even * b ** 2 * (span + a) ** 2) / (24 * span);
}

/** Over each support, positive where the beam sags. */
function momentsOver(bays: readonly Bay[]): number[] {
  const inner = bays.slice(1, -1);
  const [before, after] = [bays[0] as Bay, bays[bays.length - 1] as Bay];
  return threeMoments(
    inner.map(({ from, to }) => to - from),
    [before.turning - before.load * (before.to - before.from), -after.turning],
    (i) => -6 * ((inner[i - 1] as Bay).rightSlope + (inner[i] as Bay).leftSlope),
  );
}

/** Shear at the left end of a bay. */
function leftShear({ load, turning, from, to }: Bay, i: number, moments: readonly number[]): number {
  return load - turning / (to - from) + ((moments[i] as number) - (moments[i - 1] as number)) / (to - from);
}

function reactionsOf(bays: readonly Bay[], moments: readonly number[]): number[] {
  return moments.map((_, i) => {
    const [left, right] = [bays[i] as Bay, bays[i + 1] as Bay];
    const fromLeft = i === 0 ? left.load : left.load - leftShear(left, i, moments);
    return fromLeft + (i === moments.length - 1 ? right.load : leftShear(right, i + 1, moments));
  });
}

/** The pieces of a bay: from its left support on, and from each load that begins in it. */
function bent(bay: Bay, i: number, bays: readonly Bay[], moments: readonly number[]): Piece[] {
  const span = bay.to - bay.from;
  if (i === 0) return beforeFirst(bay, bays[1] as Bay, moments);
  const curve = -(moments[i - 1] as number);
  if (i === bays.length - 1) {
    if (!(span > 0)) return [];
    const inner = bays[i - 1] as Bay;
    return walked(bay, { bend: 0, turn: -rightTurn(inner, i - 1, moments), curve, force: -bay.load });
  }
  return walked(bay, {
    ...{ bend: 0, turn: leftTurn(bay, i, moments), curve },
    force: -leftShear(bay, i, moments),
  });
}

function leftTurn({ leftSlope, from, to }: Bay, i: number, moments: readonly number[]): number {
  return leftSlope + ((to - from) * (2 * (moments[i - 1] as number) + (moments[i] as number))) / 6;
}

function rightTurn({ rightSlope, from, to }: Bay, i: number, moments: readonly number[]): number {
  return rightSlope + ((to - from) * ((moments[i - 1] as number) + 2 * (moments[i] as number))) / 6;
}

/** What overhangs the first support, from the free end on: it is turned so that it meets the support as the bay behind it does. */
function beforeFirst(bay: Bay, behind: Bay, moments: readonly number[]): Piece[] {
  const span = bay.to - bay.from;
  if (!(span > 0)) return [];
  const pieces = walked(bay, { bend: 0, turn: 0, curve: 0, force: 0 });
  const last = pieces[pieces.length - 1] as Piece;
  const end = moved(last, bay.to);
  const turn = leftTurn(behind, 1, moments) - end.turn;
  const bend = -end.bend - turn * span;
  return pieces.map((piece) => ({
    ...piece,
    bend: piece.bend + bend + turn * (piece.at - bay.from),
    turn: piece.turn + turn,
  }));
}

function walked(bay: Bay, start: Omit<Piece, "at" | "even">): Piece[] {
  let piece: Piece = { at: bay.from, even: bay.even, ...start };
  const pieces = [piece];
  for (const { at, force, even } of bay.jumps) {
    piece = moved(piece, at);
    piece.force += force;
    piece.even += even;
    pieces.push(piece);
  }
  return pieces;
}

/** The same stretch seen from a place further on. */
function moved(piece: Piece, to: number): Piece {
  const { at, turn, curve, force, even } = piece;
  const s = to - at;
  return {
    at: to,
    bend: bendOf(piece, s),
    turn: turn + s * (curve + (s / 2) * (force + (s / 3) * even)),
    curve: curve + s * (force + (s / 2) * even),
    force: force + s * even,
    even,
  };
}

/** Places along a beam of length 1. */
interface Extremes {
  deflectionAt: number;
  momentAt: number;
}

/** Of two places as good to rounding, as on a beam that is its own mirror, the left one counts. */
const TELL_APART = 1 + 1e-10;

/**
 * In each piece the deflection is one polynomial of the fourth degree: its slope is a cubic, its moment a parabola. Each
 * is largest at an end or where its own derivative is 0.
 */
function extremesOf(pieces: readonly Piece[]): Extremes {
  let deflectionAt = 0;
  let momentAt = 0;
  let most = 0;
  let mostCurve = 0;
  for (let i = 0; i < pieces.length; i++) {
    const piece = pieces[i] as Piece;
    const { at, turn, curve, force, even } = piece;
    const span = (pieces[i + 1]?.at ?? 1) - at;
    if (!(span > 0)) continue;
    const roots = rootsOfSlope(turn, curve, force, even, span);
    for (let k = -1; k <= roots.length; k++) {
      const s = k < 0 ? 0 : (roots[k] ?? span);
      const size = Math.abs(bendOf(piece, s));
      if (size > most * TELL_APART) {
        most = size;
        deflectionAt = at + s;
      }
    }
    const peak = -force / even;
    for (let k = 0; k < 3; k++) {
      const s = k === 0 ? 0 : k === 1 ? peak : span;
      const size = s >= 0 && s <= span ? Math.abs(curve + s * (force + (s / 2) * even)) : 0;
      if (size > mostCurve * TELL_APART) {
        mostCurve = size;
        momentAt = at + s;
      }
    }
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
