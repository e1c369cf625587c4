/** A fold of cloth without any stiffness: what a heavy elastica comes to as weight wins. */
export interface LimpFold {
  depthMm: number;
  droopMm: number;
  upAtTopNPerMm: number;
  upAtBottomNPerMm: number;
}

/**
 * Two legs that hang straight down, as the catenary does when its ends are one above the other: droop (s − d)/2, the
 * upper row carries w(s + d)/2 and the lower w(s − d)/2. A stiff fold stands out by about (B/w)^⅓ more, so this bounds
 * its droop from above and is no use for its depth.
 */
export function limpFold(arcMm: number, gapMm: number, weightNPerMm2: number): LimpFold {
  return {
    depthMm: 0,
    droopMm: (arcMm - gapMm) / 2,
    upAtTopNPerMm: (weightNPerMm2 * (arcMm + gapMm)) / 2,
    upAtBottomNPerMm: (weightNPerMm2 * (arcMm - gapMm)) / 2,
  };
}
