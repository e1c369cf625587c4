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

/** A place in space, any unit. */
export interface SpacePoint {
  x: number;
  y: number;
  z: number;
}

/** Angle between the direction into `at` and the direction out of it, 0 for a straight run, rad. */
export function turnRad(before: SpacePoint, at: SpacePoint, after: SpacePoint): number {
  const into = minus(at, before);
  const out = minus(after, at);
  const across = Math.hypot(
    into.y * out.z - into.z * out.y,
    into.z * out.x - into.x * out.z,
    into.x * out.y - into.y * out.x,
  );
  return Math.atan2(across, into.x * out.x + into.y * out.y + into.z * out.z);
}

function minus(a: SpacePoint, b: SpacePoint): SpacePoint {
  return { x: a.x - b.x, y: a.y - b.y, z: a.z - b.z };
}
