import type { FoldState } from "./raised-shape.ts";

/**
 * Lowest point of a fold between two rings where its cloth is limp: half of its slack below the lower ring
 * (the catenary with both ends on one plumb line).
 */
export function limpBottomYMm({ lowerYMm, upperYMm, arcMm }: FoldState): number {
  return lowerYMm + Math.max(0, arcMm - (lowerYMm - upperYMm)) / 2;
}
