import { findRoot, type Root } from "./solve/find-root.ts";

/** A chain or cord without stiffness between two ends at one level, hung by its own weight. */
export interface Catenary {
  spanMm: number;
  arcMm: number;
  sagMm: number;
  /** Radius of curvature at the lowest point; the pull there is this long a piece's weight. */
  parameterMm: number;
  /** Slope at the ends, rad. */
  endRad: number;
}

/** How it hangs, or why it cannot. */
export type CatenaryOutcome =
  | { kind: "hangs"; value: Catenary }
  /** No slack: it lies straight. */
  | { kind: "taut"; value: Catenary }
  /** Both ends at one place: two legs side by side. */
  | { kind: "folded"; value: Catenary }
  /** Too short to reach. */
  | { kind: "short"; missingMm: number }
  | { kind: "notConverged"; residual: number };

/**
 * Sag from cloth and span: S/L = sinh u / u with u = L/2k, then sag = k(cosh u − 1). Inextensible, no stiffness, own
 * weight only; a swag of cloth is curved both ways, so take it for the line of its edge.
 *
 * @throws on a length that is below 0 or not finite
 */
export function catenaryOfArc(spanMm: number, arcMm: number): CatenaryOutcome {
  demand("spanMm", spanMm);
  demand("arcMm", arcMm);
  if (arcMm < spanMm) return { kind: "short", missingMm: spanMm - arcMm };
  if (arcMm === spanMm) return { kind: "taut", value: straight(spanMm) };
  if (spanMm === 0) return { kind: "folded", value: folded(arcMm) };
  const ratio = arcMm / spanMm;
  // sinh u / u is at least 1 + u²/6, at most exp(u), and past exp(u)/3u for u > 3: that brackets its root.
  const high = Math.min(Math.sqrt(6 * (ratio - 1)), 3 + 2 * Math.log(ratio)) * 1.0001;
  const low = Math.log(ratio);
  const root = findRoot((u) => excess(u) - (ratio - 1), low, high);
  if (root.kind !== "converged") return notFound(root);
  const u = root.value;
  const parameterMm = spanMm / (2 * u);
  const sagMm = 2 * parameterMm * Math.sinh(u / 2) ** 2;
  return { kind: "hangs", value: { spanMm, arcMm, sagMm, parameterMm, endRad: Math.atan(Math.sinh(u)) } };
}

/**
 * Cloth from span and sag: solves k(cosh(L/2k) − 1) = sag.
 *
 * @throws on a length that is below 0 or not finite
 */
export function catenaryOfSag(spanMm: number, sagMm: number): CatenaryOutcome {
  demand("spanMm", spanMm);
  demand("sagMm", sagMm);
  if (sagMm === 0) return { kind: "taut", value: straight(spanMm) };
  if (spanMm === 0) return { kind: "folded", value: folded(2 * sagMm) };
  const ratio = sagMm / spanMm;
  const misses = (u: number) => (u === 0 ? 0 : Math.sinh(u / 2) ** 2 / u) - ratio;
  // It is at least u/4, and past exp(u)/5u for u > 3.
  const root = findRoot(misses, 0, Math.min(4 * ratio, 3 + 2 * Math.log(1 + 4 * ratio)) * 1.0001);
  if (root.kind !== "converged") return notFound(root);
  const u = root.value;
  const parameterMm = spanMm / (2 * u);
  const arcMm = 2 * parameterMm * Math.sinh(u);
  return { kind: "hangs", value: { spanMm, arcMm, sagMm, parameterMm, endRad: Math.atan(Math.sinh(u)) } };
}

/**
 * Span from cloth and sag, k = (S²/4 − sag²) / (2 sag); two legs side by side where the sag is half the cloth.
 *
 * @throws on a length that is below 0 or not finite
 */
export function catenaryOfArcAndSag(arcMm: number, sagMm: number): CatenaryOutcome {
  demand("arcMm", arcMm);
  demand("sagMm", sagMm);
  if (sagMm === 0) return { kind: "taut", value: straight(arcMm) };
  if (2 * sagMm > arcMm) return { kind: "short", missingMm: 2 * sagMm - arcMm };
  if (2 * sagMm === arcMm) return { kind: "folded", value: folded(arcMm) };
  const parameterMm = (arcMm ** 2 / 4 - sagMm ** 2) / (2 * sagMm);
  const u = Math.asinh(arcMm / (2 * parameterMm));
  return {
    kind: "hangs",
    value: { spanMm: 2 * parameterMm * u, arcMm, sagMm, parameterMm, endRad: Math.atan(Math.sinh(u)) },
  };
}

export interface SlantedCatenary {
  parameterMm: number;
  /** How far the lowest point hangs under the lower end. */
  droopMm: number;
  /** Share of the whole weight that the upper end carries. */
  upperShare: number;
}

/**
 * Ends at two levels: √(S² − d²) = 2k sinh(h/2k) (Routh; Irvine, Cable Structures, 1981; from memory). As h → 0 it
 * comes to two straight legs. Undefined where the cord is too short.
 *
 * @throws where the ends are not apart, or the upper one lies below the lower
 */
export function slantedCatenary(
  acrossMm: number,
  dropMm: number,
  arcMm: number,
): SlantedCatenary | undefined {
  if (!(acrossMm > 0) || !(dropMm >= 0)) throw new Error(`invalid acrossMm: ${acrossMm}`);
  if (arcMm ** 2 <= acrossMm ** 2 + dropMm ** 2) return undefined;
  const level = catenaryOfArc(acrossMm, Math.sqrt(arcMm ** 2 - dropMm ** 2));
  if (level.kind !== "hangs") return undefined;
  const k = level.value.parameterMm;
  const middle = Math.atanh(dropMm / arcMm);
  const u = acrossMm / (2 * k);
  // Heights of the ends over the lowest point of the curve, which may lie past the lower end.
  const lower = middle - u;
  const droopMm = lower < 0 ? 2 * k * Math.sinh(lower / 2) ** 2 : 0;
  return { parameterMm: k, droopMm, upperShare: (k * Math.sinh(middle + u)) / arcMm };
}

function notFound(root: Root): CatenaryOutcome {
  return {
    kind: "notConverged",
    residual: root.kind === "noBracket" ? Number.POSITIVE_INFINITY : root.residual,
  };
}

/** sinh u / u − 1 without losing the digits of a shallow curve. */
function excess(u: number): number {
  if (Math.abs(u) > 0.5) return Math.sinh(u) / u - 1;
  const q = u * u;
  return (q / 6) * (1 + (q / 20) * (1 + (q / 42) * (1 + (q / 72) * (1 + (q / 110) * (1 + q / 156)))));
}

function straight(spanMm: number): Catenary {
  return { spanMm, arcMm: spanMm, sagMm: 0, parameterMm: Number.POSITIVE_INFINITY, endRad: 0 };
}

function folded(arcMm: number): Catenary {
  return { spanMm: 0, arcMm, sagMm: arcMm / 2, parameterMm: 0, endRad: Math.PI / 2 };
}

function demand(name: string, value: number): void {
  if (!(value >= 0 && value < Number.POSITIVE_INFINITY)) throw new Error(`invalid ${name}: ${value}`);
}
