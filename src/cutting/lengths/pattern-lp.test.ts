import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { expectOptimal, run, singlesOf } from "../../../test/cutting/expect-optimal.ts";
import { expectNear } from "../../../test/near.ts";
import { type PatternColumn, PatternLp } from "./pattern-lp.ts";

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

  test("of a first column that holds nothing is none", () => {
    const none = { cost: 1, rows: [], counts: [] };
    expect(() => new PatternLp([1, 1], [], [{ ...none, rows: [0], counts: [1] }, none])).toThrow(
      "invalid basis: singular",
    );
  });

  test("that holds less of one row for more of another (turned pieces) is at its optimum, too", () => {
    const lp = new PatternLp([0, 6], [], singlesOf(2, 4));
    lp.add({ cost: 0, rows: [0, 1], counts: [-2, 3] });
    run(lp.solve());
    // Two shifts of three for four of the other: 4 · 4 = 16 instead of 6 · 5 = 30.
    expectNear(expectOptimal(lp, [0, 6], []), 16, 1e-4);
  });
});
