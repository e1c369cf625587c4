import type { StepGrid } from "./grid.ts";
import type { Packing } from "./packing.ts";

/**
 * Lengths that may be cut from each bolt for a plan to cost so much less than the best: the dearest bolt in use gives
 * first, those cut before it keep all their length, or only what they have used where `tight`.
 */
export function aimAt(
  grid: StepGrid,
  sequence: readonly number[],
  best: Packing,
  saving: number,
  tight: boolean,
): Float64Array {
  const lengths = new Float64Array(grid.bolts.length);
  let left = saving;
  for (let k = sequence.length - 1; k >= 0; k--) {
    const at = sequence[k] as number;
    const { h, costPerStep } = grid.bolts[at] as StepGrid["bolts"][number];
    const used = best.used[at] ?? 0;
    const whole = h - grid.gap;
    if (used === 0 && left > 0) continue;
    const take = costPerStep > 0 ? Math.min(used, left / costPerStep) : 0;
    if (take > 0) {
      // A saving smaller than a step is a whole step.
      lengths[at] = Math.max(
        0,
        (Math.ceil((used - take) / grid.stepY) - (take < grid.stepY ? 1 : 0)) * grid.stepY,
      );
      // What rounding leaves of the saving is not asked of the cheaper cloth, which would have to give many times as much.
      left -= used * costPerStep;
    } else {
      lengths[at] = tight || !Number.isFinite(whole) ? used : whole;
    }
  }
  return lengths;
}
