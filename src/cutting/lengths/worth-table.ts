import type { Worth } from "./price-pattern.ts";

/** Cells of the table at the most: a finer measure is made coarser, which lets a bound only sink. */
const MOST_CELLS = 20_000;
/** Worths become whole numbers of this fineness, so that their sums are exact. */
const PARTS = 2 ** 24;
/** Below this all worths count as nothing, before dividing by it overflows. */
const SMALLEST_PART = 1e-100;

/**
 * What the best pattern is worth on any length up to `longest`: bounded knapsack by dynamic programming. Sizes are
 * rounded down to the table's cells and worths to whole parts, so the answer is exact for those worths where the cells
 * are fine enough, and never below the truth otherwise.
 *
 * @returns the worths that it was worked out for, and the most that fits on a length
 */
export function worthTable(
  { sizes, worth, limits }: Worth,
  longest: number,
): { worth: number[]; on: (room: number) => number } {
  const cell = Math.max(1, longest / MOST_CELLS);
  const cells = Math.floor(longest / cell);
  const greatest = Array.from(worth).reduce((most, one) => Math.max(most, one), 0);
  const part = greatest / PARTS > SMALLEST_PART ? greatest / PARTS : 1;
  const whole = sizes.map((_, type) => Math.floor(Math.max(0, worth[type] as number) / part));
  const most = new Float64Array(cells + 1);
  for (let type = 0; type < sizes.length; type++) {
    const own = Math.floor((sizes[type] as number) / cell);
    const each = whole[type] as number;
    if (each === 0) continue;
    let left = Math.min(limits[type] as number, Math.floor(longest / (sizes[type] as number)));
    // Counts up to the limit as a sum of 1, 2, 4 … and a rest.
    for (let lot = 1; left > 0; lot *= 2) {
      const times = Math.min(lot, left);
      left -= times;
      addLot(most, times * own, times * each);
    }
  }
  return {
    worth: whole.map((parts) => parts * part),
    on: (room) => (most[Math.min(cells, Math.floor(room / cell))] as number) * part,
  };
}

function addLot(most: Float64Array, size: number, worth: number): void {
  for (let room = most.length - 1; room >= size; room--) {
    const withIt = (most[room - size] as number) + worth;
    if (withIt > (most[room] as number)) most[room] = withIt;
  }
}
