/** Amounts of cost nearer than this share of them are the same. */
export const SAME_COST = 1e-9;

/** A plan is optimal where nothing lies between its cost and the bound; the word is given nowhere else. */
export function isProved(cost: number, bound: number): boolean {
  return cost - bound <= SAME_COST * Math.max(1, cost);
}
