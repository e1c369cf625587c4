import { findRoot } from "../solve/find-root.ts";

/** Complete elliptic integrals of both kinds of the modulus k by the arithmetic-geometric mean (NIST DLMF 19.8). */
export function ellipticIntegrals(k: number): { first: number; second: number } {
  let [a, b, c] = [1, Math.sqrt(1 - k * k), k];
  let sum = (c * c) / 2;
  // The mean doubles its digits each time; eight rounds do for every k that a double can hold.
  for (let round = 0, weight = 1; round < 8; round++, weight *= 2) {
    [a, b, c] = [(a + b) / 2, Math.sqrt(a * b), (a - b) / 2];
    sum += weight * c * c;
  }
  const first = Math.PI / (2 * a);
  return { first, second: first * (1 - sum) };
}

/** A weightless strip bent between two hinges, in its own units (half arc 1, rigidity 1). */
export interface WeightlessFold {
  modulus: number;
  /** Slope at the hinges, rad. */
  endSlopeRad: number;
  /** How far it stands out. */
  depth: number;
  /** Force that presses the hinges together. */
  thrust: number;
}

/**
 * Euler's elastica: gap/2 = 2E/K − 1, sin(θ₀/2) = k, depth = 2k/K, thrust = K² (Timoshenko & Gere, Theory of Elastic
 * Stability, 2nd ed., §2.7; from memory). Exact to rounding for 0 ≤ gap < 2.
 *
 * @throws on a gap below 0 or of 2 and more half arcs
 */
export function weightlessFold(gap: number): WeightlessFold {
  if (!(gap >= 0 && gap < 2)) throw new Error(`invalid gap: ${gap}`);
  const misses = (k: number) => {
    const { first, second } = ellipticIntegrals(k);
    return (4 * second) / first - 2 - gap;
  };
  const root = findRoot(misses, 0, 0.999);
  const modulus = root.kind === "converged" ? root.value : 0;
  const { first } = ellipticIntegrals(modulus);
  return {
    modulus,
    endSlopeRad: 2 * Math.asin(modulus),
    depth: (2 * modulus) / first,
    thrust: first * first,
  };
}
