/**
 * Tension ratio of a flexible cord that slides over a fixed guide, T_out / T_in = e^(μθ).
 *
 * Morton & Hearle, Physical Properties of Textile Fibres, ch. 25, equation 25.2. Holds for a cord
 * without bending stiffness; a thick cord on a small eye asks for more.
 *
 * @param friction coefficient of friction μ of cord on guide
 * @param wrapRad angle θ through which the cord turns on the guide, rad
 */
export function capstanRatio(friction: number, wrapRad: number): number {
  return Math.exp(friction * wrapRad);
}

/** A place in a plane, any unit. */
export interface PlanePoint {
  x: number;
  y: number;
}

/** Angle between the direction into `at` and the direction out of it, 0 for a straight run, rad. */
export function turnRad(before: PlanePoint, at: PlanePoint, after: PlanePoint): number {
  const inX = at.x - before.x;
  const inY = at.y - before.y;
  const outX = after.x - at.x;
  const outY = after.y - at.y;
  return Math.abs(Math.atan2(inX * outY - inY * outX, inX * outX + inY * outY));
}
