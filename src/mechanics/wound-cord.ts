/** A cord that winds on a round core, mm. */
export interface Winding {
  coreRadiusMm: number;
  cordDiameterMm: number;
  /** Wraps that lie side by side in one layer; 1 where the cord winds upon itself. */
  sideBySide: number;
}

/**
 * From the axis to the middle of a cord at the end of `woundMm` of it, mm:
 *
 *   ρ = sqrt((r + d/2)² + d·l / (π·n))
 *
 * The middle line is taken as an Archimedean spiral that grows by d/n a turn, with dl = ρ dθ. That leaves out the
 * slope of the spiral: against its exact length the radius is too large by d²·ln(ρ/ρ₀)/(8 π² n² ρ²) of itself,
 * 0.1 % at most where the core is twice as wide as the cord is thick. Layer by layer the true radius goes up in steps of d,
 * never more than one cord's thickness from this.
 */
export function woundRadiusMm(
  { coreRadiusMm, cordDiameterMm, sideBySide }: Winding,
  woundMm: number,
): number {
  const firstMm = coreRadiusMm + cordDiameterMm / 2;
  return Math.sqrt(firstMm ** 2 + (cordDiameterMm * woundMm) / (Math.PI * sideBySide));
}

/** Turns between two radii of one winding: the radius grows by d/n a turn. */
export function turnsBetween(
  { cordDiameterMm, sideBySide }: Omit<Winding, "coreRadiusMm">,
  fromMm: number,
  toMm: number,
): number {
  return ((toMm - fromMm) * sideBySide) / cordDiameterMm;
}
