import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { expectNear } from "../../../test/near.ts";
import { type PatternColumn, PatternLp } from "./pattern-lp.ts";

const run = (steps: Generator<void, void>): number => [...steps].length;

/**
 * What is both met and worth as much as it costs, with worths that no column beats, is the optimum: strong duality of
 * linear programming (Chvátal, Linear Programming, 1983, ch. 5). Asks nothing of how it was found.
 */
function expectOptimal(lp: PatternLp, demand: readonly number[], supply: readonly number[]): number {
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

interface Case {
  demand: number[];
  supply: number[];
  columns: { cost: number; counts: number[]; stock: number }[];
}

const anyCase: fc.Arbitrary<Case> = fc
  .tuple(fc.integer({ min: 1, max: 6 }), fc.nat(2))
  .chain(([rows, stocks]) =>
    fc.record({
      demand: fc.array(fc.integer({ min: 0, max: 20 }), { minLength: rows, maxLength: rows }),
      supply: fc.array(fc.integer({ min: 0, max: 9 }), { minLength: stocks, maxLength: stocks }),
      columns: fc.array(
        fc.record({
          cost: fc.integer({ min: 1, max: 12 }),
          counts: fc.array(fc.nat(3), { minLength: rows, maxLength: rows }),
          stock: fc.integer({ min: -1, max: stocks - 1 }),
        }),
        { maxLength: 12 },
      ),
    }),
  );

const columnOf = (rows: number, { cost, counts, stock }: Case["columns"][number]): PatternColumn => {
  const held = counts.flatMap((count, row) => (count > 0 ? [row] : []));
  const column = { cost, rows: held, counts: held.map((row) => counts[row] ?? 0) };
  return stock < 0 ? column : { ...column, stockRow: rows + stock };
};
const singlesOf = (rows: number, cost: number): PatternColumn[] =>
  Array.from({ length: rows }, (_, row) => ({ cost: cost + row, rows: [row], counts: [1] }));

describe("the programme of patterns", () => {
  test("is at its optimum after each solution, with columns added in between", () => {
    fc.assert(
      fc.property(fc.array(anyCase, { minLength: 8, maxLength: 8 }), (cases) => {
        for (const { demand, supply, columns } of cases) {
          const rows = demand.length;
          const lp = new PatternLp(demand, supply, singlesOf(rows, 15));
          run(lp.solve());
          let cost = expectOptimal(lp, demand, supply);
          expectNear(
            cost,
            demand.reduce((sum, each, row) => sum + each * (15 + row), 0),
            1e-2,
          );
          for (const half of [columns.slice(0, 5), columns.slice(5)]) {
            for (const one of half) lp.add(columnOf(rows, one));
            run(lp.solve());
            const now = expectOptimal(lp, demand, supply);
            expect(now).toBeLessThanOrEqual(cost + 1e-3);
            cost = now;
          }
        }
      }),
      { numRuns: 15 },
    );
  });

  // By hand: 2 x + y ≥ 10, x + 3 y ≥ 15 at 3 and 4: x = 3, y = 4, so 25, at worths of 1 and 1.
  test("of two rows and two columns is what can be worked out by hand", () => {
    const lp = new PatternLp([10, 15], [], singlesOf(2, 50));
    lp.add({ cost: 3, rows: [0, 1], counts: [2, 1] });
    lp.add({ cost: 4, rows: [0, 1], counts: [1, 3] });
    run(lp.solve());
    expectNear(expectOptimal(lp, [10, 15], []), 25, 1e-4);
    expectNear(lp.duals[0] ?? 0, 1, 1e-6);
    expectNear(lp.duals[1] ?? 0, 1, 1e-6);
    expect(lp.used().map(({ amount }) => Math.round(amount))).toEqual(expect.arrayContaining([3, 4]));
  });

  // By hand: ten wanted, four at hand at 1 each, the rest at 5; one more at hand would save 4.
  test("tells by its worths what one more at hand would save", () => {
    const lp = new PatternLp([10], [4], singlesOf(1, 5));
    lp.add({ cost: 1, rows: [0], counts: [1], stockRow: 1 });
    run(lp.solve());
    expectNear(expectOptimal(lp, [10], [4]), 4 + 6 * 5, 1e-4);
    expectNear(lp.duals[0] ?? 0, 5, 1e-6);
    expectNear(lp.duals[1] ?? 0, -4, 1e-6);
  });

  test("that holds less of one row for more of another (turned pieces) is at its optimum, too", () => {
    const lp = new PatternLp([0, 6], [], singlesOf(2, 4));
    lp.add({ cost: 0, rows: [0, 1], counts: [-2, 3] });
    run(lp.solve());
    // Two shifts of three for four of the other: 4 · 4 = 16 instead of 6 · 5 = 30.
    expectNear(expectOptimal(lp, [0, 6], []), 16, 1e-4);
  });

  test("is worked out afresh where a row's own column has nothing in it, limited stock among them", () => {
    const rows = 170;
    const demand = Array.from({ length: rows }, (_, row) => (row < 2 ? 10 : 1));
    const supply = [3];
    const lp = new PatternLp(demand, supply, singlesOf(rows, 100));
    const solve = (column: PatternColumn) => {
      lp.add(column);
      run(lp.solve());
      expectOptimal(lp, demand, supply);
    };
    // One after the other in the place of the first row, of the second, and of the first again: without that row.
    solve({ cost: 90, rows: [0, 1], counts: [1, 2] });
    solve({ cost: 60, rows: [0, 1], counts: [1, 1] });
    solve({ cost: 1, rows: [1], counts: [1] });
    solve({ cost: 1, rows: [2], counts: [1], stockRow: rows });
    const before = lp.columns.length;
    for (let row = 3; row < rows; row++) solve({ cost: 1, rows: [row], counts: [1] });
    expect(lp.columns.length - before).toBe(rows - 3);
    // By hand: 60 for the first row, each with one of the second; 1 for each of the others.
    expectNear(expectOptimal(lp, demand, supply), 10 * 60 + (rows - 2), 1e-2);
  });

  test("stays exact over hundreds of exchanges, and pauses where each takes long", () => {
    const rows = 60;
    const demand = Array.from({ length: rows }, (_, row) => 1 + ((row * 7) % 13));
    const lp = new PatternLp(demand, [], singlesOf(rows, 40));
    const at = (n: number, by: number) => (n * by + (n >> 2)) % rows;
    for (let round = 0; round < 8; round++) {
      for (let n = 0; n < 90; n++) {
        const held = [...new Set([at(n + 17 * round, 11), at(n, 23), at(n + round, 37), at(n, 41 + round)])];
        lp.add({
          cost: 10 + ((n * 5) % 9) + 9 * (8 - round),
          rows: held,
          counts: held.map((row) => 1 + (row % 3)),
        });
      }
      expect(run(lp.solve())).toBe(0);
      expectOptimal(lp, demand, []);
    }
    const wide = 500;
    const large = new PatternLp(
      Array.from({ length: wide }, () => 1),
      [],
      singlesOf(wide, 10),
    );
    for (let row = 0; row < wide; row++) large.add({ cost: 1, rows: [row], counts: [1] });
    // 20 million cells of its inverse between two pauses: every 80 exchanges of 250,000 each.
    expect(run(large.solve())).toBe(Math.floor(500 / 80));
    expectNear(
      expectOptimal(
        large,
        Array.from({ length: wide }, () => 1),
        [],
      ),
      wide,
      1e-2,
    );
  });
});
