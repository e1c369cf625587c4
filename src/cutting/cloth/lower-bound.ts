import { type Bars, barBound } from "./bar-bound.ts";
import type { GridBolt, StepGrid } from "./grid.ts";
import type { Bound } from "./problem.ts";
import { latticeSpread, plainSpread, type Spread } from "./spread.ts";

/** Widths apart in the bar relaxation: more are rounded down to steps, which lets the bound only sink. */
const MOST_WIDTHS = 300;
/** Beyond so many widths and kinds of cloth the relaxation would take minutes. */
const MOST_ROWS = 500;
/** Sums of worths are exact to so many parts. */
const SLIVER = 1e-7;

/** What the areas, and the pieces that cannot lie side by side, prove at once. */
export function quickBound(grid: StepGrid): Bound {
  const bounds: Bound[] = [];
  for (const spread of spreadsOf(grid)) {
    bounds.push({ cost: raise(grid, spread, areaCost(grid, spread)), which: "area" });
    bounds.push({ cost: raise(grid, spread, wideCost(grid, spread)), which: "wide" });
  }
  return bounds.reduce((best, bound) => (bound.cost > best.cost ? bound : best));
}

/** The bar relaxation; pauses between its rounds. */
export function* strictBound(grid: StepGrid): Generator<void, Bound> {
  let cost = 0;
  for (const spread of spreadsOf(grid)) {
    const bars = barsOf(grid, spread);
    if (bars.widths.length + bars.stock.length > MOST_ROWS) continue;
    const { cost: value } = yield* barBound(bars);
    cost = Math.max(cost, raise(grid, spread, value));
  }
  return { cost, which: "bars" };
}

/** One bolt gains from the repeat; over many the tails of each would cost more than the repeat gives. */
function spreadsOf(grid: StepGrid): Spread[] {
  const plain = plainSpread(grid);
  if (!grid.lattice) return [plain];
  const spread = latticeSpread(grid, grid.lattice);
  const gains = spread.tailX > plain.tailX || spread.tailY > plain.tailY || spread.lead > 0;
  if (!gains) return [plain];
  return grid.bolts.length === 1 ? [spread] : [plain, spread];
}

const extended = (bolt: GridBolt, spread: Spread, gap: number) => ({
  width: bolt.w + spread.tailX,
  length: bolt.h + spread.tailY - gap,
  cost: bolt.costPerStep,
});

/** From the cost of enlarged items to that of a plan: the tails come off, and a single length is raised to its step. */
function raise(grid: StepGrid, spread: Spread, cost: number): number {
  const [only] = grid.bolts;
  if (!only || grid.bolts.length > 1) {
    const tails = grid.bolts.reduce((sum, bolt) => sum + bolt.costPerStep * (spread.tailY + SLIVER), 0);
    return Math.max(0, cost * (1 - SLIVER) - tails);
  }
  if (only.costPerStep <= 0) return 0;
  const length = cost / only.costPerStep;
  const whole = spread.rows > 0 ? upTo(length, spread.rows) : length;
  return Math.max(0, upTo(spread.lead + whole - spread.tailY, grid.stepY)) * only.costPerStep;
}

function upTo(value: number, step: number): number {
  return Math.ceil((value / step) * (1 - SLIVER)) * step;
}

function areaCost(grid: StepGrid, spread: Spread): number {
  let area = spread.w.reduce((sum, w, i) => sum + w * (spread.h[i] ?? 0), 0);
  let cost = 0;
  const byArea = grid.bolts
    .map((bolt) => extended(bolt, spread, grid.gap))
    .sort((a, b) => a.cost / a.width - b.cost / b.width);
  for (const { width, length, cost: each } of byArea) {
    const used = Math.min(length, area / width);
    cost += used * each;
    area -= used * width;
    if (area <= 0) break;
  }
  return cost;
}

function wideCost(grid: StepGrid, spread: Spread): number {
  const widest = grid.bolts.reduce((most, bolt) => Math.max(most, bolt.w + spread.tailX), 0);
  const least = grid.bolts.reduce((cost, { costPerStep }) => Math.min(cost, costPerStep), Number.MAX_VALUE);
  let length = 0;
  for (const ways of waysToLie(grid, spread, widest)) {
    if (ways.length === 0 || ways.some(([width]) => 2 * width <= widest)) continue;
    length += Math.min(...ways.map(([, each]) => each));
  }
  return length * least;
}

/** Width and length of each enlarged item as it may lie on the widest bolt: upright first, then turned. */
export function waysToLie(
  { items }: StepGrid,
  { w, h }: Spread,
  widest: number,
): [width: number, length: number][][] {
  return items.map(({ turns }, i) => {
    const [width, length] = [w[i] ?? 0, h[i] ?? 0];
    const ways: [number, number][] = turns
      ? [
          [width, length],
          [length, width],
        ]
      : [[width, length]];
    return ways.filter(([across]) => across <= widest);
  });
}

export function barsOf(grid: StepGrid, spread: Spread): Bars {
  const widest = grid.bolts.reduce((most, bolt) => Math.max(most, bolt.w + spread.tailX), 0);
  const items = waysToLie(grid, spread, widest);
  const classes = widthClasses(items.flatMap((ways) => ways.map(([width]) => width)));
  const index = new Map(classes.widths.map((width, k) => [width, k]));
  const at = (width: number) => index.get(classes.of(width)) ?? 0;
  const limits = classes.widths.map(() => 0);
  const demand = classes.widths.map(() => 0);
  const turning: Bars["turning"][number][] = [];
  const add = (list: number[], k: number, value: number) => {
    list[k] = (list[k] ?? 0) + value;
  };
  for (const ways of items) {
    for (const [width] of ways) add(limits, at(width), 1);
    const [one, other] = ways;
    if (!one) continue;
    if (!other) add(demand, at(one[0]), one[1]);
    else {
      turning.push({
        upright: { width: at(one[0]), length: one[1] },
        turned: { width: at(other[0]), length: other[1] },
      });
    }
  }
  return { widths: classes.widths, limits, demand, turning, stock: stockOf(grid, spread) };
}

/** Bolts of one width and price are one stock of their lengths together. */
function stockOf(grid: StepGrid, spread: Spread): Bars["stock"] {
  const stock = new Map<string, { width: number; length: number; cost: number }>();
  for (const bolt of grid.bolts) {
    const { width, length, cost } = extended(bolt, spread, grid.gap);
    const key = `${width} ${cost}`;
    stock.set(key, { width, cost, length: length + (stock.get(key)?.length ?? 0) });
  }
  return [...stock.values()];
}

function widthClasses(widths: readonly number[]): { widths: number[]; of: (width: number) => number } {
  const distinct = Array.from(new Set(widths)).sort((a, b) => a - b);
  if (distinct.length <= MOST_WIDTHS) return { widths: distinct, of: (width) => width };
  const [least, most] = [distinct[0] as number, distinct.at(-1) as number];
  const step = (most - least) / (MOST_WIDTHS - 1);
  const of = (width: number) => Math.floor(least + Math.floor((width - least) / step) * step);
  return { widths: Array.from(new Set(distinct.map(of))), of };
}
