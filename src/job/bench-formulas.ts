import { capstanRatio, frictionFromPair } from "../mechanics/index.ts";

/** A turn from vertical to horizontal, at a cord's own eye, rad. */
export const QUARTER_TURN_RAD = Math.PI / 2;
/** Pull at which a maker measures the stretch of a cord. */
export const STRETCH_PULL_N = 10;

/** Least of the readings at which the lock let one cord slip, N. */
export function leastHoldN({ readingsN }: { readingsN: readonly number[] }): number {
  return Math.min(...readingsN);
}

/** Diameter of a cord: width of the turns round a pencil / their number, mm. */
export function diameterFromTurns({ turns, widthMm }: { turns: number; widthMm: number }): number {
  return widthMm / turns;
}

/** What is read when a weight is hung on a length of cord, mm and N. */
interface StretchReadings {
  lengthMm: number;
  grewMm: number;
  pullN: number;
}

/** Share of its length by which a cord grows under 10 N: growth / length, in proportion to the pull. */
export function stretchAt10N({ lengthMm, grewMm, pullN }: StretchReadings): number {
  return (grewMm / lengthMm) * (STRETCH_PULL_N / pullN);
}

/** Readings over a quarter turn: what just raises a weight, and what just lets it sink. Any unit, the same for both. */
interface FrictionPair {
  raisesN: number;
  lowersN: number;
}

/**
 * What two readings over a quarter turn come to, by the capstan equation: friction ln(raises / lowers) / (2 · π/2), and
 * the share of the pull that a pulley of the same friction passes on. Undefined where the readings are no such pair.
 */
export function frictionOfPair({
  raisesN,
  lowersN,
}: FrictionPair): { friction: number; pulleyShare: number } | undefined {
  if (!(lowersN > 0) || !(raisesN >= lowersN) || !Number.isFinite(raisesN)) return undefined;
  const friction = frictionFromPair(raisesN, lowersN, QUARTER_TURN_RAD);
  return { friction, pulleyShare: 1 / capstanRatio(friction, QUARTER_TURN_RAD) };
}
