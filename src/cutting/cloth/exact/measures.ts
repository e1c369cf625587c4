import { worthTable } from "../../lengths/worth-table.ts";
import { barBound } from "../bar-bound.ts";
import type { StepGrid } from "../grid.ts";
import { barsOf, waysToLie } from "../lower-bound.ts";
import { latticeSpread, plainSpread } from "../spread.ts";

/**
 * What each piece takes of the cloth at the least, in lengths of the widest: no strip across holds more than 1 of it
 * (a dual-feasible function; Fekete and Schepers, Mathematical Programming 91, 2001, 11–31).
 */
export interface Measure {
  of: Float64Array;
  /** The most that a strip so wide can hold. */
  on: (width: number) => number;
}

/** The measures, and what the last piece of a bolt may save of its own. */
export interface Measures {
  list: readonly Measure[];
  tailY: number;
}

/** The area, and the worths of widths by the bar relaxation; pauses between the rounds of that. */
export function* measuresOf(grid: StepGrid): Generator<void, Measures> {
  const spread = grid.lattice ? latticeSpread(grid, grid.lattice) : plainSpread(grid);
  const widest = grid.bolts.reduce((most, { w }) => Math.max(most, w), 0) + spread.tailX;
  const ways = waysToLie(grid, spread, widest);
  const area: Measure = {
    of: Float64Array.from(spread.w, (w, item) => (w * (spread.h[item] ?? 0)) / widest),
    on: (width) => Math.min(1, (width + spread.tailX) / widest),
  };
  const bars = {
    ...barsOf(grid, spread),
    stock: [{ width: widest, length: Number.POSITIVE_INFINITY, cost: 1 }],
  };
  const { worth } = yield* barBound(bars);
  const table = worthTable({ sizes: bars.widths, worth, limits: bars.limits }, widest);
  const scale = 1 / Math.max(1, table.on(widest));
  const worthOf = new Map(bars.widths.map((width, k) => [width, scale * (table.worth[k] ?? 0)]));
  const strips: Measure = {
    // A piece that may lie two ways takes the lesser of both.
    of: Float64Array.from(ways, (list) =>
      list.reduce(
        (least, [width, length]) => Math.min(least, (worthOf.get(width) ?? 0) * length),
        Number.MAX_VALUE,
      ),
    ),
    on: (width) => scale * table.on(Math.max(0, width + spread.tailX)),
  };
  return { list: [strips, area], tailY: spread.tailY };
}
