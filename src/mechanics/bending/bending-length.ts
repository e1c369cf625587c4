/** Slope at which a bending tester reads its overhang, degrees (IS 6490:1971; BS 3356 and ASTM D1388 practice). */
export const TESTER_SLOPE_DEG = 41.5;

/**
 * Bending length from the overhang that reaches the tester's slope: c = l/2. The exact heavy elastica gives 0.49991 l,
 * so this is within 0.02 %; Peirce's formula at the same slope would be 1.9 % too large.
 */
export function bendingLengthMm(overhangMm: number): number {
  return overhangMm / 2;
}

/**
 * Peirce's bending length at any chord angle, c = l·(cos(θ/2) / (8 tan θ))^⅓ (J. Text. Inst. 21 (1930) T377).
 * Against the exact elastica it is too large: 0.1 % at 10°, 1.9 % at 41.5°, 4.4 % at 60°.
 */
export function peirceLengthMm(overhangMm: number, chordRad: number): number {
  return overhangMm * Math.cbrt(Math.cos(chordRad / 2) / (8 * Math.tan(chordRad)));
}

/**
 * Peirce's heart loop for cloth too limp or curly for the tester (ASTM D1388 option B; from memory). A strip of
 * `stripMm` hangs as a loop of height `heightMm` from its joined ends; l₀ = 0.1337 L, θ = 32.85° (l − l₀)/l₀,
 * c = l₀ (cos θ / tan θ)^⅓. Within 4 % of the exact loop for wL³/B up to 512.
 */
export function heartLoopLengthMm(stripMm: number, heightMm: number): number {
  const weightless = 0.1337 * stripMm;
  const angle = (((32.85 * Math.PI) / 180) * (heightMm - weightless)) / weightless;
  return weightless * Math.cbrt(Math.cos(angle) / Math.tan(angle));
}
