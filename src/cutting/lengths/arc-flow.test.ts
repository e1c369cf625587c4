import { describe, expect, test } from "vitest";
import { arcFlow } from "./arc-flow.ts";

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
});
