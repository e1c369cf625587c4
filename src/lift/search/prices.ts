import type { Cord, Eye } from "../../job/index.ts";
import { MM_PER_M } from "../../units/index.ts";
import type { HardwareNeed } from "./need.ts";

/** Price of all cords of one shade off the spool; infinite where it has none. */
export function cordPrice(
  { pricePerM }: Cord,
  count: number,
  { riseMm, widthMm, spareMm }: HardwareNeed,
): number {
  if (pricePerM === undefined) return Number.POSITIVE_INFINITY;
  // Runs along the board come to half of the width for a cord, one with another.
  return (pricePerM * count * (riseMm + widthMm / 2 + spareMm)) / MM_PER_M;
}

/** Price of so many of what is sold in packs. */
export function packPrice({ price, packOf = 1 }: Pick<Eye, "price" | "packOf">, count: number): number {
  return price === undefined ? Number.POSITIVE_INFINITY : (price * count) / packOf;
}
