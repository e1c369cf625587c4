/** Money to the cent, once per line. The sliver keeps 1.005 from falling to 1.00 in binary. */
export function toCent(amount: number): number {
  return Math.round(amount * 100 + 1e-7) / 100;
}

/** Sums what lines cost, each in whole cents, without drift; a line without a price counts as nothing. */
export function sumCents(lines: Iterable<{ cost?: number | undefined }>): number {
  let cents = 0;
  for (const { cost = 0 } of lines) cents += Math.round(cost * 100);
  return cents / 100;
}
