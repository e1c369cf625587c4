/** Screws of one bracket on an upright face, and the weight that it holds out from it. */
export interface PriedBracket {
  loadN: number;
  /** From the face out to the load. */
  armMm: number;
  /** Height of each screw above the edge on which the bracket turns. */
  screwsMm: readonly number[];
}

export interface ScrewPull {
  /** Away from the face, N. */
  pullN: number;
  /** Down along it, N. */
  shearN: number;
}

/**
 * Statics of a stiff bracket that turns on its lower edge: the pull of a screw grows with its height, T = M z / Σ z²,
 * so one screw takes M/z; the weight is shared evenly as shear. No friction is counted on, and no give in the face.
 *
 * @throws where a screw lies below the lower edge, or none above it
 */
export function screwPulls({ loadN, armMm, screwsMm }: PriedBracket): ScrewPull[] {
  const squares = screwsMm.reduce((sum, z) => sum + z * z, 0);
  if (!(squares > 0) || screwsMm.some((z) => z < 0)) {
    throw new Error(`invalid screwsMm: ${screwsMm.join(", ")}`);
  }
  return screwsMm.map((z) => ({
    pullN: (loadN * armMm * z) / squares,
    shearN: loadN / screwsMm.length,
  }));
}
