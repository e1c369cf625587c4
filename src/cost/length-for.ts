import { SAME_LENGTH_MM } from "../units/index.ts";
import { longestMm } from "./longest.ts";
import type { LengthsNeed, SoldLength } from "./need.ts";

/** Every length in which it is sold, the usual one first. */
export function soldLengths({ stockMm, price, alsoSold = [] }: LengthsNeed): SoldLength[] {
  return stockMm === undefined ? [...alsoSold] : [{ lengthMm: stockMm, price }, ...alsoSold];
}

/**
 * The one length by which a need is computed while one types: the usual one, or the shortest of the others that holds
 * the longest cut. The cutting plan chooses among all of them.
 */
export function lengthFor(need: LengthsNeed): SoldLength | undefined {
  const longest = longestMm(need.cutsMm) - SAME_LENGTH_MM;
  const [usual, ...others] = soldLengths(need);
  if (usual === undefined || usual.lengthMm >= longest) return usual;
  const longer = others.filter(({ lengthMm }) => lengthMm >= longest);
  return longer.reduce((best, one) => (one.lengthMm < best.lengthMm ? one : best), longer[0] ?? usual);
}
