import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { expectNear } from "../../../test/near.ts";
import { assignSlots, type SlotProblem } from "./assign-slots.ts";

/** Every way to put the row of cords into the slots, at most `perSlot` in each. */
function everyCut(cords: number, slots: number, perSlot: number): number[][] {
  if (slots === 0) return cords === 0 ? [[]] : [];
  const cuts: number[][] = [];
  for (let count = 0; count <= Math.min(perSlot, cords); count++) {
    for (const rest of everyCut(cords - count, slots - 1, perSlot)) cuts.push([count, ...rest]);
  }
  return cuts;
}

/** The aims in order, each the less the better: shared slots, spread of cords, spread of load, way to the eyes' line. */
function aims({ loadsN, fromInner, offsetsMm }: SlotProblem, counts: number[]): number[] {
  let next = 0;
  let shared = 0;
  let spread = 0;
  let load = 0;
  let way = 0;
  const total = loadsN.reduce((sum, one) => sum + one, 0);
  counts.forEach((count, slot) => {
    const inside = loadsN.slice(next, next + count);
    const ends = new Set(inside.map((_, i) => next + i < fromInner));
    if (ends.size === 2) shared++;
    spread += count ** 2;
    load += (inside.reduce((sum, one) => sum + one, 0) / total) ** 2;
    way += count * (offsetsMm[slot] ?? 0);
    next += count;
  });
  return [shared, spread, load, way];
}

function isNoWorse(one: number[], other: number[]): boolean {
  for (let i = 0; i < one.length; i++) {
    const difference = (one[i] ?? 0) - (other[i] ?? 0);
    if (Math.abs(difference) > 1e-4) return difference < 0;
  }
  return true;
}

const anyProblem: fc.Arbitrary<SlotProblem> = fc
  .record({
    loads: fc.array(fc.double({ min: 0.5, max: 3, noNaN: true }), { minLength: 1, maxLength: 7 }),
    inner: fc.nat(7),
    slots: fc.integer({ min: 1, max: 5 }),
    more: fc.nat(2),
  })
  .map(({ loads, inner, slots, more }) => ({
    loadsN: loads,
    fromInner: Math.min(inner, loads.length),
    offsetsMm: Array.from({ length: slots }, (_, i) => Math.abs(i - (slots - 1) / 2) * 7),
    perSlot: Math.ceil(loads.length / slots) + more,
  }));

describe("slots", () => {
  test("are as good as the best of all cuts (every one tried)", () => {
    fc.assert(
      fc.property(anyProblem, (problem) => {
        const counts = assignSlots(problem);
        expect(counts.reduce((sum, count) => sum + count, 0)).toBe(problem.loadsN.length);
        expect(Math.max(...counts)).toBeLessThanOrEqual(problem.perSlot);
        const found = aims(problem, counts);
        for (const cut of everyCut(problem.loadsN.length, problem.offsetsMm.length, problem.perSlot)) {
          expect(isNoWorse(found, aims(problem, cut)), `${counts} against ${cut}`).toBe(true);
        }
      }),
      { numRuns: 300 },
    );
  });

  test("five cords of X1, four from within, in three slots of two: 2, 2, 1, none shared", () => {
    const problem = { loadsN: [2.2, 3.3, 3, 3.3, 2.2], fromInner: 4, offsetsMm: [7, 0, 7], perSlot: 2 };
    expect(assignSlots(problem)).toEqual([2, 2, 1]);
  });

  test("six cords, five from within: one slot has to be shared", () => {
    const problem = { loadsN: [1, 1, 1, 1, 1, 1], fromInner: 5, offsetsMm: [7, 0, 7], perSlot: 2 };
    expect(assignSlots(problem)).toEqual([2, 2, 2]);
  });

  test("fewer cords than slots lie near the line of the eyes, side by side", () => {
    const problem = { loadsN: [1, 1, 1], fromInner: 2, offsetsMm: [14, 7, 0, 7, 14], perSlot: 2 };
    expect(assignSlots(problem)).toEqual([0, 1, 1, 1, 0]);
  });

  test("of ways that are as good the first slot from the wall is taken", () => {
    expect(assignSlots({ loadsN: [1], fromInner: 1, offsetsMm: [7, 7], perSlot: 1 })).toEqual([1, 0]);
    expect(assignSlots({ loadsN: [1, 1], fromInner: 2, offsetsMm: [7, 7, 7], perSlot: 1 })).toEqual([
      1, 1, 0,
    ]);
  });

  test("cords that do not fit are a bug of the caller", () => {
    expect(() => assignSlots({ loadsN: [1, 1], fromInner: 1, offsetsMm: [0], perSlot: 1 })).toThrow(
      "invalid perSlot",
    );
  });

  test("sixty cords in thirteen slots take far less than a frame", () => {
    const loadsN = Array.from({ length: 60 }, (_, i) => 1 + (i % 3));
    const counts = assignSlots({ loadsN, fromInner: 59, offsetsMm: loadsN.slice(0, 13), perSlot: 5 });
    expectNear(Math.max(...counts), 5, 0);
  });
});

test("a last digit of the loads moves no cord (regression: six equal cords in five slots, seen in the mirror)", () => {
  const loadsN = [0.1, 0.2, 0.2, 0.2, 0.2, 0.1];
  const problem = { fromInner: 6, offsetsMm: [12, 6, 0, 6, 12], perSlot: 2 };
  const counts = assignSlots({ ...problem, loadsN });
  for (const [i, loadN] of loadsN.entries()) {
    for (const hair of [1 - 2e-16, 1 + 3e-16, 1 + 1e-14]) {
      const nudged = loadsN.with(i, loadN * hair);
      expect(assignSlots({ ...problem, loadsN: nudged }), `cord ${i + 1} × ${hair}`).toEqual(counts);
    }
  }
});
