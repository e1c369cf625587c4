/**
 * An opening taken as a parallelogram of mean width w and mean height h.
 *
 * Parallelogram law: d₁² + d₂² = 2(w² + h²), and d₁² − d₂² = 4·w·h·cos γ, so that its sides lean by
 * h·cos γ = (d₁² − d₂²) / 4w over its height.
 */

/** How far the sides lean over the height, mm: what a plumb shade loses of its width. */
export function leanMm(widthMm: number, firstDiagonalMm: number, secondDiagonalMm: number): number {
  return Math.abs(firstDiagonalMm ** 2 - secondDiagonalMm ** 2) / (4 * widthMm);
}

/** How far the measured diagonals are, in the mean, from what width and height ask for, mm. */
export function diagonalMisfitMm(
  widthMm: number,
  heightMm: number,
  firstDiagonalMm: number,
  secondDiagonalMm: number,
): number {
  const expected = Math.hypot(widthMm, heightMm);
  const measured = Math.sqrt((firstDiagonalMm ** 2 + secondDiagonalMm ** 2) / 2);
  return measured - expected;
}
