import { describe, expect, test } from "vitest";
import { arcFlow, barsOfFlow } from "./arc-flow.ts";
import { TO_MEASURE } from "./bar-pattern.ts";

const ENDLESS = Number.POSITIVE_INFINITY;

describe("the exact programme", () => {
  // By hand, one of 4 and two of 3 on lengths of 10: cuts from 0 (4 and 3), 4 (3), 3 (3) and 7 (3); places 0, 3, 4, 6,
  // 7, 10; free cells between five of them; one length of stock.
  test("has an arc for every cut from every place that longer cuts reach, and is refused beyond the number allowed", () => {
    const one = {
      sizes: [4, 3],
      demand: [1, 2],
      stock: [{ size: 10, cost: 1, available: ENDLESS }],
      costStep: 1,
    };
    const arcs = arcFlow(one, 100)?.arcs ?? [];
    const cuts = arcs.flatMap((arc) => (arc.kind === "cut" ? [`${arc.type}: ${arc.from} to ${arc.to}`] : []));
    expect(cuts.sort()).toEqual(["0: 0 to 4", "1: 0 to 3", "1: 3 to 6", "1: 4 to 7", "1: 7 to 10"]);
    const free = arcs.flatMap((arc) => (arc.kind === "free" ? [[arc.from, arc.to]] : []));
    expect(free).toEqual([
      [3, 4],
      [4, 6],
      [6, 7],
      [7, 10],
    ]);
    expect(arcs).toHaveLength(10);
    expect(arcFlow(one, 10)?.arcs).toHaveLength(10);
    expect(arcFlow(one, 9)).toBeUndefined();
    expect(arcFlow(one, 4)).toBeUndefined();
    expect(arcFlow({ ...one, toMeasure: [4, 3] }, 12)?.arcs).toHaveLength(12);
    expect(arcFlow({ ...one, toMeasure: [4, 3] }, 11)).toBeUndefined();
  });

  // By hand, of the same cuts: places 0, 3, 4, 6, 7, 10 are rows, and behind them the two types.
  test("takes out at each place what comes in, and allows no more of anything than there is, or is wanted", () => {
    const stock = [
      { size: 10, cost: 7, available: ENDLESS },
      { size: 6, cost: 5, available: 2 },
      { size: 0, cost: 1, available: 1 },
    ];
    const flow = arcFlow({ sizes: [4, 3], demand: [1, 2], stock, costStep: 1, toMeasure: [9, 8] }, 100);
    if (flow === undefined) throw new Error("too many");
    const { rowLower, rowUpper, starts, rows, values, upper, cost } = flow.programme;
    expect(rowLower).toEqual([0, 0, 0, 0, 0, 0, 1, 2]);
    expect(rowUpper).toEqual([0, 0, 0, 0, 0, 0, ENDLESS, ENDLESS]);
    const columns = flow.arcs.map((arc, j) => {
      const held = rows.slice(starts[j], starts[j + 1]).map((row, k) => [row, values[(starts[j] ?? 0) + k]]);
      const name = "from" in arc ? `${arc.kind} ${arc.from} to ${arc.to}` : `${arc.kind} ${arc.type}`;
      return [name, held, upper[j], cost[j]];
    });
    const PLACES = [0, 3, 4, 6, 7, 10];
    const between = (from: number, to: number) => [
      [PLACES.indexOf(from), -1],
      [PLACES.indexOf(to), 1],
    ];
    const cut = (from: number, to: number, type: number, most: number) => [
      `cut ${from} to ${to}`,
      [...between(from, to), [6 + type, 1]],
      most,
      0,
    ];
    const free = (from: number, to: number) => [`free ${from} to ${to}`, between(from, to), 3, 0];
    expect(columns).toEqual([
      cut(0, 4, 0, 1),
      cut(0, 3, 1, 2),
      cut(4, 7, 1, 2),
      cut(3, 6, 1, 2),
      cut(7, 10, 1, 2),
      free(3, 4),
      free(4, 6),
      free(6, 7),
      free(7, 10),
      // No more lengths than cuts.
      ["stock 10 to 0", between(10, 0), 3, 7],
      ["stock 6 to 0", between(6, 0), 2, 5],
      ["stock 0 to 0", [], 1, 1],
      ["measure 0", [[6, 1]], 1, 9],
      ["measure 1", [[7, 1]], 2, 8],
    ]);
    expect(starts).toHaveLength(15);
  });

  // By hand: 4 + 3 and 3 + 3 on lengths of 10, and one more 3 of each kind than is wanted.
  test("comes apart into bars, without what is cut beyond the demand", () => {
    const whole = {
      sizes: [4, 3],
      demand: [1, 3],
      stock: [{ size: 10, cost: 1, available: ENDLESS }],
      costStep: 0,
      toMeasure: [4, 3],
    };
    const flow = arcFlow(whole, 100);
    if (flow === undefined) throw new Error("too many");
    const barsOf = (amounts: Record<string, number>, demand = whole.demand) => {
      const values = flow.arcs.map((arc) => {
        const name = "from" in arc ? `${arc.kind} ${arc.from} ${arc.to}` : `${arc.kind} ${arc.type}`;
        return amounts[name] ?? 0;
      });
      return barsOfFlow({ ...whole, demand }, flow, values);
    };
    const two = {
      "cut 0 4": 1,
      "cut 4 7": 1,
      // A hair off a whole number is that number.
      "cut 0 3": 1 - 1e-7,
      "cut 3 6": 1 + 1e-7,
      "free 6 7": 1,
      "free 7 9": 2,
      "free 9 10": 2,
      "stock 10 0": 2,
    };
    const full = [
      { stock: 0, types: [0, 1] },
      { stock: 0, types: [1, 1] },
    ];
    expect(barsOf(two)).toEqual(full);
    expect(barsOf(two, [1, 2])).toEqual([full[0], { stock: 0, types: [1] }]);
    // A bar that holds nothing wanted is none.
    expect(barsOf(two, [1, 1])).toEqual([full[0]]);
    expect(barsOf({ ...two, "measure 1": 2, "measure 0": 1 }, [2, 4])).toEqual([
      ...full,
      { stock: TO_MEASURE, types: [0] },
      { stock: TO_MEASURE, types: [1] },
    ]);
    expect(barsOf({ "measure 1": 3 }, [1, 2])).toEqual([
      { stock: TO_MEASURE, types: [1] },
      { stock: TO_MEASURE, types: [1] },
    ]);
  });
});
