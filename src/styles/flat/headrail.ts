import { centimetres } from "../../units/index.ts";

/** Allowance beside the batten's face and the mechanism's depth, and the floor below which nobody goes. */
export const BESIDE_RIB_MM = centimetres(3.5);
export const BESIDE_MECHANISM_MM = centimetres(2.5);
export const HEADRAIL_FLOOR_MM = centimetres(6.5);

/**
 * Least headrail allowance: flat cloth that stays above the gathered rings, mm.
 * Too little and the rings jam at the head while the shade still hangs low; too much only hangs lower.
 *
 * Source: workroom tutorials, “Headrail allowance explained”: batten face + 3.5 cm or mechanism depth
 * + 2.5 cm. The 6.5 cm floor is applied by the planner, not here.
 */
export function headrailAllowanceMm(parts: { ribFaceMm?: number; mechanismDepthMm?: number }): number {
  return Math.max(
    parts.ribFaceMm === undefined ? 0 : parts.ribFaceMm + BESIDE_RIB_MM,
    parts.mechanismDepthMm === undefined ? 0 : parts.mechanismDepthMm + BESIDE_MECHANISM_MM,
  );
}
