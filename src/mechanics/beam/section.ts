/** What the shape of a bar is worth against bending. */
export interface BeamSection {
  areaMm2: number;
  /** Second moment of area, mm⁴. */
  inertiaMm4: number;
  /** Section modulus, mm³. */
  modulusMm3: number;
}

/** Rectangle that bends across its height: b h³/12 and b h²/6. */
export function rectangle(widthMm: number, heightMm: number): BeamSection {
  return {
    areaMm2: widthMm * heightMm,
    inertiaMm4: (widthMm * heightMm ** 3) / 12,
    modulusMm3: (widthMm * heightMm ** 2) / 6,
  };
}

/** Round tube, or a rod where there is no hole: π(D⁴ − d⁴)/64. */
export function roundTube(outerMm: number, innerMm = 0): BeamSection {
  const inertiaMm4 = (Math.PI * (outerMm ** 4 - innerMm ** 4)) / 64;
  return {
    areaMm2: (Math.PI * (outerMm ** 2 - innerMm ** 2)) / 4,
    inertiaMm4,
    modulusMm3: inertiaMm4 / (outerMm / 2),
  };
}

/** Stress at the outer fibre, σ = M / W, N/mm². */
export function bendingStressNPerMm2(momentNmm: number, { modulusMm3 }: BeamSection): number {
  return Math.abs(momentNmm) / modulusMm3;
}

/** Mass of a metre of bar, kg. */
export function massKgPerM({ areaMm2 }: BeamSection, densityKgPerM3: number): number {
  return areaMm2 * densityKgPerM3 * 1e-6;
}
