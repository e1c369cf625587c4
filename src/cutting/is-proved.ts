/** Amounts of cost nearer than this share of them are the same. */
export const SAME_COST = 1e-9;
/** Bounds are lowered by what their sums may be wrong; on ten metres this share is a hundredth of a millimetre. */
const PROVED = 1e-6;

/** A plan is optimal where nothing that a ruler could show lies between its cost and the bound; the word is given nowhere else. */
export function isProved(cost: number, bound: number): boolean {
  return cost - bound <= Math.max(SAME_COST, PROVED * cost);
}
