/** What the solvers found for folds of one weight. */
export interface FoldLevel {
  /** Half the angle of a drop that hangs free. */
  freeRad: number;
  /** Moments that press it to the shares of `DROP_SHARES` after the first, in units of B/a. */
  moments: readonly number[];
  /** As in `FoldOpening`. */
  startShare: number;
  outShare: number;
}

/** Weight of a fold against its stiffness, λ = w a³/B with a half of its cloth. */
export function foldWeight(
  { weightNPerMm2, rigidityNmm }: { weightNPerMm2: number; rigidityNmm: number },
  arcMm: number,
): number {
  return (weightNPerMm2 * (arcMm / 2) ** 3) / rigidityNmm;
}
