/** Standard acceleration of gravity, m/s² (NIST SP 811, appendix B; exact by definition). */
const GRAVITY = 9.80665;

/** Weight of a square mm of cloth, N. */
export function weightNPerMm2(massGPerM2: number): number {
  return massGPerM2 * GRAVITY * 1e-9;
}

/** Flexural rigidity for each mm of width, N·mm, from its definition B = w c³. */
export function rigidityNmm(massGPerM2: number, bendingLengthMm: number): number {
  return weightNPerMm2(massGPerM2) * bendingLengthMm ** 3;
}

/** The other way round: c = (B / w)^⅓, mm. */
export function bendingLengthOfRigidityMm(massGPerM2: number, rigidity: number): number {
  return Math.cbrt(rigidity / weightNPerMm2(massGPerM2));
}

export interface ClothLayer {
  massGPerM2: number;
  bendingLengthMm: number;
}

/** Layers that slide on each other: masses and rigidities add (mechanics). Bonded or coated layers are stiffer. */
export function looseLayers(layers: readonly ClothLayer[]): ClothLayer {
  const mass = layers.reduce((sum, { massGPerM2 }) => sum + massGPerM2, 0);
  const rigidity = layers.reduce((sum, one) => sum + rigidityNmm(one.massGPerM2, one.bendingLengthMm), 0);
  return { massGPerM2: mass, bendingLengthMm: mass > 0 ? bendingLengthOfRigidityMm(mass, rigidity) : 0 };
}

/** Rigidity both ways at once, the geometric mean of warp and weft (BS 3356; from memory). */
export function overallRigidityNmm(warpNmm: number, weftNmm: number): number {
  return Math.sqrt(warpNmm * weftNmm);
}

/** Units in which cloth laboratories report; all exact, since 1 gf = 9.80665 mN. */
export const RIGIDITY_NMM_PER = {
  µN·m: 1e-3,
  mg·cm: 9.80665e-5,
  "gf·cm²/cm": 9.80665e-2,
  mN·cm: 1e-2,
} as const;
