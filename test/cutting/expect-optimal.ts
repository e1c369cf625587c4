import { expect } from "vitest";
import type { PatternColumn, PatternLp } from "../../src/cutting/lengths/pattern-lp.ts";
import { expectNear } from "../near.ts";

/**
 * What is both met and worth as much as it costs, with worths that no column beats, is the optimum: strong duality of
 * linear programming (Chvátal, Linear Programming, 1983, ch. 5). Asks nothing of how it was found.
 */
export function expectOptimal(lp: PatternLp, demand: readonly number[], supply: readonly number[]): number {
  const used = lp.used();
  const duals = [...lp.duals];
  const met = [...demand, ...supply].map(() => 0);
  let cost = 0;
  for (const { column, amount } of used) {
    expect(lp.columns).toContain(column);
    expect(amount).toBeGreaterThan(0);
    cost += amount * column.cost;
    column.rows.forEach((row, k) => {
      met[row] = (met[row] ?? 0) + amount * (column.counts[k] ?? 0);
    });
    if (column.stockRow !== undefined) met[column.stockRow] = (met[column.stockRow] ?? 0) + amount;
  }
  const sliver = 1e-3;
  demand.forEach((wanted, row) => {
    expect(met[row]).toBeGreaterThanOrEqual(wanted - sliver);
    expect(duals[row]).toBeGreaterThanOrEqual(-1e-6);
  });
  supply.forEach((most, k) => {
    expect(met[demand.length + k]).toBeLessThanOrEqual(most + sliver);
    expect(duals[demand.length + k]).toBeLessThanOrEqual(1e-6);
  });
  for (const column of lp.columns) {
    const worth =
      column.rows.reduce((sum, row, k) => sum + (duals[row] ?? 0) * (column.counts[k] ?? 0), 0) +
      (column.stockRow === undefined ? 0 : (duals[column.stockRow] ?? 0));
    expectNear(lp.reducedCost(column), column.cost - worth, 1e-6, "reduced cost");
    expect(column.cost - worth).toBeGreaterThanOrEqual(-1e-6);
  }
  const worth = [...demand, ...supply].reduce((sum, each, row) => sum + each * (duals[row] ?? 0), 0);
  expectNear(cost, worth, 1e-3 * Math.max(1, cost), "cost and worth");
  return cost;
}

/** A column for each row alone, each dearer by 1 than the one before. */
export const singlesOf = (rows: number, cost: number): PatternColumn[] =>
  Array.from({ length: rows }, (_, row) => ({ cost: cost + row, rows: [row], counts: [1] }));

/** Runs to the end; how often it has paused. */
export const run = (steps: Generator<void, void>): number => [...steps].length;
