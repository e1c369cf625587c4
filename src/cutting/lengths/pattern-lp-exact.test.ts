import { expect, test } from "vitest";
import { expectOptimal, run, singlesOf } from "../../../test/cutting/expect-optimal.ts";
import { expectNear } from "../../../test/near.ts";
import { type PatternColumn, PatternLp } from "./pattern-lp.ts";

test("a programme is worked out afresh where a row's own column has nothing in it, limited stock among them", () => {
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

test("a programme stays exact over hundreds of exchanges, and pauses where each takes long", () => {
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
