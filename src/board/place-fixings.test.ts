import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { expectNear } from "../../test/near.ts";
import { type FixingProblem, placeFixings } from "./place-fixings.ts";

const plain: FixingProblem = {
  fromMm: 0,
  toMm: 1000,
  endMm: 100,
  largestMm: 600,
  widthMm: 20,
  fewest: 3,
  keepOut: [],
};

const anyProblem: fc.Arbitrary<FixingProblem> = fc
  .record({
    length: fc.double({ min: 100, max: 4000, noNaN: true }),
    end: fc.double({ min: 10, max: 200, noNaN: true }),
    largest: fc.double({ min: 100, max: 900, noNaN: true }),
    spots: fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { maxLength: 12 }),
    half: fc.double({ min: 3, max: 40, noNaN: true }),
  })
  .map(({ length, end, largest, spots, half }) => {
    const endMm = Math.min(end, length / 4);
    return {
      fromMm: 0,
      toMm: length,
      endMm,
      largestMm: largest,
      widthMm: 20,
      fewest: Math.max(2, Math.ceil((length - 2 * endMm) / largest - 1e-9) + 1),
      keepOut: spots.map((spot): [number, number] => [spot * length - half, spot * length + half]),
    };
  });

describe("fixings", () => {
  test("with nothing in the way: at the asked distance from the ends, evenly between", () => {
    expect(placeFixings(plain)).toEqual({ placesMm: [100, 500, 900], faults: [] });
  });

  test("one in the middle of an eye moves beside it", () => {
    const { placesMm, faults } = placeFixings({ ...plain, keepOut: [[490, 520]] });
    expect(placesMm).toEqual([100, 480, 900]);
    expect(faults).toEqual([]);
    expect(placeFixings({ ...plain, keepOut: [[480, 510]] }).placesMm).toEqual([100, 520, 900]);
  });

  test("an outer one moves towards the end", () => {
    expect(placeFixings({ ...plain, keepOut: [[95, 110]] }).placesMm[0]).toBe(85);
  });

  test("inwards only where the end has no place, and says so", () => {
    const { placesMm, faults } = placeFixings({ ...plain, keepOut: [[0, 150]] });
    expect(placesMm[0]).toBe(160);
    expect(faults).toEqual(["end"]);
  });

  test("one more where moving breaks the spacing", () => {
    const { placesMm, faults } = placeFixings({ ...plain, largestMm: 400, keepOut: [[470, 560]] });
    expect(placesMm).toHaveLength(4);
    expect(faults).toEqual([]);
  });

  test("a board without any clear place says so", () => {
    expect(placeFixings({ ...plain, keepOut: [[-1, 1001]] }).faults).toContain("clear");
    expect(placeFixings({ ...plain, fewest: 1, keepOut: [[-1, 1001]] })).toEqual({
      placesMm: [500],
      faults: ["clear"],
    });
  });

  test("whatever is in the way: what no fault is told of, is kept", () => {
    fc.assert(
      fc.property(anyProblem, (problem) => {
        const { placesMm, faults } = placeFixings(problem);
        const half = problem.widthMm / 2;
        placesMm.forEach((place, i) => {
          const before = placesMm[i - 1];
          if (before !== undefined) {
            expect(place - before).toBeGreaterThanOrEqual(problem.widthMm - 1e-6);
            if (!faults.includes("spacing"))
              expect(place - before).toBeLessThanOrEqual(problem.largestMm + 1e-6);
          }
          if (!faults.includes("clear")) {
            for (const [from, to] of problem.keepOut) {
              expect(place + half <= from + 1e-6 || place - half >= to - 1e-6).toBe(true);
            }
          }
        });
        if (!faults.includes("end")) {
          expect(placesMm[0] ?? Number.NaN).toBeLessThanOrEqual(problem.endMm + 1e-6);
          expect(problem.toMm - (placesMm.at(-1) ?? 0)).toBeLessThanOrEqual(problem.endMm + 1e-6);
        }
      }),
      { numRuns: 500 },
    );
  });

  test("a free board never needs more than the formula says: ceil((B − 2e)/m) + 1", () => {
    fc.assert(
      fc.property(anyProblem, (problem) => {
        const { placesMm, faults } = placeFixings({ ...problem, keepOut: [] });
        expect(faults).toEqual([]);
        expect(placesMm).toHaveLength(problem.fewest);
        expectNear((placesMm[0] ?? 0) + (placesMm.at(-1) ?? 0), problem.toMm, 1e-9);
      }),
    );
  });
});
