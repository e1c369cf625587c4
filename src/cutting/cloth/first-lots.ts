import type { StepGrid } from "./grid.ts";

/** Of the area of a lot so much is given to groups at first: the rest is lost between pieces. */
const SHARES = [0.97, 0.85, 0.65];

/**
 * Lots that each group of pieces may begin with: the cheapest cloth that has area for it, as long as that lasts, with
 * ever more to spare; at last for each the lot with the most cloth.
 *
 * @param lotChoices for each lot group the lots with area enough for it, those with the most first
 */
export function firstLots(
  { bolts, lotAreas }: StepGrid,
  lotChoices: readonly (readonly number[])[],
): (readonly number[])[] {
  const widest = lotChoices.map((choices) => choices[0] ?? -1);
  if (lotChoices.every((choices) => choices.length < 2)) return [widest];
  const lots = new Map<number, { area: number; rate: number }>();
  for (const { lot, w, h, costPerStep } of bolts) {
    const known = lots.get(lot);
    const rate = Math.min(known?.rate ?? Number.POSITIVE_INFINITY, costPerStep / w);
    lots.set(lot, { area: (known?.area ?? 0) + w * h, rate });
  }
  const rateOf = (lot: number) => lots.get(lot)?.rate ?? 0;
  const groups = [...lotAreas.keys()].sort((a, b) => (lotAreas[b] ?? 0) - (lotAreas[a] ?? 0));
  const starts = SHARES.map((share) => {
    const left = new Map([...lots].map(([lot, { area }]) => [lot, share * area]));
    const chosen = [...widest];
    for (const group of groups) {
      const need = lotAreas[group] ?? 0;
      const lot = (lotChoices[group] ?? [])
        .filter((one) => (left.get(one) ?? 0) >= need)
        .reduce<number | undefined>(
          (best, one) => (best === undefined || rateOf(one) < rateOf(best) ? one : best),
          undefined,
        );
      if (lot === undefined) continue;
      chosen[group] = lot;
      left.set(lot, (left.get(lot) ?? 0) - need);
    }
    return chosen;
  });
  const distinct = new Map([...starts, widest].map((start) => [start.join(" "), start]));
  return [...distinct.values()];
}
