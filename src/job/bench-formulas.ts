import { capstanRatio, frictionFromPair } from "../mechanics/index.ts";

/** A turn from vertical to horizontal, at a cord's own eye, rad. */
export const QUARTER_TURN_RAD = Math.PI / 2;
/** Pull at which a maker measures the stretch of a cord. */
export const STRETCH_PULL_N = 10;

/** Least of the readings at which the lock let one cord slip, N. */
export function leastHoldN({ readingsN }: { readingsN: readonly number[] }): number {
  return Math.min(...readingsN);
}

/** The value where a part of the house can have it, else undefined: readings that come to no such part count for nothing. */
function within(value: number, least: number, most: number): number | undefined {
  return value >= least && value <= most ? value : undefined;
}

/** Diameter of a cord: width of the turns round a pencil / their number, mm. Undefined beyond 0.3 to 6 mm. */
export function diameterFromTurns({
  turns,
  widthMm,
}: {
  turns: number;
  widthMm: number;
}): number | undefined {
  return within(widthMm / turns, 0.3, 6);
}

/** What is read when a weight is hung on a length of cord, mm and N. */
interface StretchReadings {
  lengthMm: number;
  grewMm: number;
  pullN: number;
}

/**
 * Share of its length by which a cord grows under 10 N: growth / length, in proportion to the pull. Undefined where that
 * is more than half.
 */
export function stretchAt10N({ lengthMm, grewMm, pullN }: StretchReadings): number | undefined {
  return within((grewMm / lengthMm) * (STRETCH_PULL_N / pullN), 0, 0.5);
}

/** Readings over a quarter turn: what just raises a weight, and what just lets it sink. Any unit, the same for both. */
interface FrictionPair {
  raisesN: number;
  lowersN: number;
}

/**
 * What two readings over a quarter turn come to, by the capstan equation: friction ln(raises / lowers) / (2 · π/2), and
 * the share of the pull that a pulley of the same friction passes on. Undefined where the readings are no such pair, or
 * come to a friction above 1.
 */
export function frictionOfPair({
  raisesN,
  lowersN,
}: FrictionPair): { friction: number; pulleyShare: number } | undefined {
  if (!(lowersN > 0) || !(raisesN >= lowersN) || !Number.isFinite(raisesN)) return undefined;
  const friction = within(frictionFromPair(raisesN, lowersN, QUARTER_TURN_RAD), 0, 1);
  if (friction === undefined) return undefined;
  return { friction, pulleyShare: 1 / capstanRatio(friction, QUARTER_TURN_RAD) };
}
