/**
 * Ultimate withdrawal of fasteners from side grain, Wood Handbook FPL-GTR-282 (2021), ch. 8: mean strength of clear
 * seasoned wood, no allowance for anything. `gravity` is G, ovendry mass over volume at 12 % moisture. For end grain
 * take about three quarters.
 */
export interface Driven {
  gravity: number;
  diameterMm: number;
  /** Threaded or driven length inside the wood that holds, mm. */
  depthMm: number;
}

/** Wood screw, p = 108.25 G² D L, N (equation 8-10). */
export function screwWithdrawalN({ gravity, diameterMm, depthMm }: Driven): number {
  return 108.25 * gravity ** 2 * diameterMm * depthMm;
}

/** Common nail, p = 54.12 G^5/2 D L, N (equation 8-1). */
export function nailWithdrawalN({ gravity, diameterMm, depthMm }: Driven): number {
  return 54.12 * gravity ** 2.5 * diameterMm * depthMm;
}

/** Ring-shank nail, p = 77.57 G² D L, N (equation 8-2a). */
export function ringNailWithdrawalN({ gravity, diameterMm, depthMm }: Driven): number {
  return 77.57 * gravity ** 2 * diameterMm * depthMm;
}

/** Lag screw, p = 125.4 G^3/2 D^3/4 L, N (equation 8-14). */
export function lagWithdrawalN({ gravity, diameterMm, depthMm }: Driven): number {
  return 125.4 * gravity ** 1.5 * diameterMm ** 0.75 * depthMm;
}
