/** Money to the cent, once per line. The sliver keeps 1.005 from falling to 1.00 in binary. */
export function toCent(amount: number): number {
  return Math.round(amount * 100 + 1e-7) / 100;
}

/** Sums amounts that are whole cents without drift. */
export function sumCents(amounts: Iterable<number>): number {
  let cents = 0;
  for (const amount of amounts) cents += Math.round(amount * 100);
  return cents / 100;
}
