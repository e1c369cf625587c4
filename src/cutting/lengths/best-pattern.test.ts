import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { expectNear } from "../../../test/near.ts";
import { dualBound } from "./dual-bound.ts";
import { farley } from "./farley.ts";
import { pricePattern, type Worth } from "./price-pattern.ts";
import { worthTable } from "./worth-table.ts";

/** The most that fits on a length, by trying every count of every type. */
function mostByTrial({ sizes, worth, limits }: Worth, room: number): number {
  const visit = (type: number, left: number): number => {
    const size = sizes[type];
    if (size === undefined) return 0;
    let most = 0;
    for (let count = 0; count <= (limits[type] ?? 0) && count * size <= left; count++) {
      most = Math.max(most, count * (worth[type] ?? 0) + visit(type + 1, left - count * size));
    }
    return most;
  };
  return visit(0, room);
}

const type = fc.record({
  size: fc.integer({ min: 1, max: 12 }),
  worth: fc.oneof({ weight: 5, arbitrary: fc.integer({ min: 1, max: 20 }) }, fc.constantFrom(-1, 0)),
  limit: fc.nat(3),
});
const worths = fc.array(type, { minLength: 1, maxLength: 5 }).map(
  (types): Worth => ({
    sizes: types.map(({ size }) => size),
    worth: types.map(({ worth }) => worth),
    limits: types.map(({ limit }) => limit),
  }),
);
const many = <T>(one: fc.Arbitrary<T>) => fc.array(one, { minLength: 20, maxLength: 20 });

describe("the pattern of greatest worth", () => {
  test("is what trying every count finds, and none where it is worth no more than asked", () => {
    const one = fc.tuple(worths, fc.integer({ min: 1, max: 30 }), fc.integer({ min: 0, max: 40 }));
    fc.assert(
      fc.property(many(one), (cases) => {
        for (const [given, room, above] of cases) {
          const best = mostByTrial(given, room);
          const { types, counts } = pricePattern(given, room, above, 1e6);
          const sum = (of: ArrayLike<number>) =>
            types.reduce((all, each, k) => all + (of[each] ?? 0) * (counts[k] ?? 0), 0);
          if (best <= above) expect([types, counts]).toEqual([[], []]);
          else expect(sum(given.worth)).toBe(best);
          expect(sum(given.sizes)).toBeLessThanOrEqual(room);
          expect(new Set(types).size).toBe(types.length);
          expect(counts).toHaveLength(types.length);
          types.forEach((each, k) => {
            expect(counts[k]).toBeGreaterThan(0);
            expect(counts[k]).toBeLessThanOrEqual(given.limits[each] ?? 0);
          });
        }
      }),
      { numRuns: 30 },
    );
  });

  // By hand: by worth and size 6 comes first (7 : 6), but 5 + 5 on 10 are worth 10.
  test("is given up after so many tries, with the best till then", () => {
    const given = { sizes: [6, 5], worth: [7, 5], limits: [1, 2] };
    expect(pricePattern(given, 10, 0, 1)).toEqual({ types: [0], counts: [1] });
    expect(pricePattern(given, 10, 0, 100)).toEqual({ types: [1], counts: [2] });
    expect(pricePattern(given, 10, 0, 0)).toEqual({ types: [], counts: [] });
  });

  test("is found without a look at what cannot be worth as much", () => {
    // By hand: 6 and three of 14 on 49 are worth 10 + 63. Without the bound by the next rate 49 are tried
    // before it instead of 8, counted with it taken out.
    const given = { sizes: [14, 6, 13, 7, 14], worth: [16, 10, 14, 7, 21], limits: [3, 3, 3, 3, 3] };
    expect(mostByTrial(given, 49)).toBe(73);
    expect(pricePattern(given, 49, 0, 8)).toEqual({ types: [1, 4], counts: [1, 3] });
    expect(pricePattern({ sizes: [6, 5], worth: [7, 5], limits: [1, 2] }, 10, 0, 2)).toEqual({
      types: [1],
      counts: [2],
    });
  });

  test("that is worth more by less than a billionth is no better", () => {
    const given = { sizes: [5], worth: [1 + 5e-10], limits: [1] };
    expect(pricePattern(given, 10, 1, 100).types).toEqual([]);
    expect(pricePattern(given, 10, 1 - 1e-8, 100).types).toEqual([0]);
    expect(pricePattern({ ...given, worth: [5e-10] }, 10, -1, 100).types).toEqual([]);
  });
});

describe("the table of worths by length", () => {
  test("holds what trying every count finds, on every length", () => {
    fc.assert(
      fc.property(many(fc.tuple(worths, fc.integer({ min: 1, max: 30 }))), (cases) => {
        for (const [given, longest] of cases) {
          const { on, worth } = worthTable(given, longest);
          for (let room = 0; room <= longest; room++)
            expectNear(on(room), mostByTrial(given, room), 1e-4, `on ${room}`);
          expect(on(longest + 7)).toBe(on(longest));
          expect(on(longest - 0.5)).toBe(on(Math.floor(longest - 0.5)));
          worth.forEach((each, k) => {
            expect(each).toBeLessThanOrEqual(Math.max(0, given.worth[k] ?? 0));
            expectNear(each, Math.max(0, given.worth[k] ?? 0), 1e-5);
          });
        }
      }),
      { numRuns: 15 },
    );
  });

  test("is never below the truth where lengths are finer than its cells, and exact where they are whole cells", () => {
    fc.assert(
      fc.property(many(fc.tuple(worths, fc.integer({ min: 5, max: 30 }))), (cases) => {
        for (const [given, most] of cases.slice(0, 4)) {
          // 20,000 cells of 1/10 of a size each, or of an odd part of it.
          for (const scale of [1000 * (20 / most) * 10, 17_777]) {
            const fine = { ...given, sizes: given.sizes.map((size) => size * scale) };
            const { on } = worthTable(fine, most * scale);
            for (let room = 0; room <= most; room++)
              expect(on(room * scale)).toBeGreaterThanOrEqual(mostByTrial(given, room) - 1e-4);
          }
        }
      }),
      { numRuns: 3 },
    );
    const given = { sizes: [50_000, 35_000], worth: [3, 2], limits: [9, 9] };
    const { on } = worthTable(given, 100_000);
    // By hand, over cells of 5: one of 35,000, then 50,000, then both, then two of 50,000.
    for (const [room, worth] of [
      [34_994, 0],
      [35_000, 2],
      [50_000, 3],
      [70_000, 4],
      [85_000, 5],
      [100_000, 6],
    ] as const)
      expectNear(on(room), worth, 1e-5, `on ${room}`);
  });

  test("of worths too small to divide by is nothing", () => {
    const { on, worth } = worthTable({ sizes: [1], worth: [1e-120], limits: [1] }, 10);
    expect([on(10), worth]).toEqual([0, [0]]);
  });
});

describe("worths that prove a bound", () => {
  const stock = fc.record({
    size: fc.integer({ min: 5, max: 30 }),
    cost: fc.integer({ min: 1, max: 30 }),
    available: fc.oneof(fc.constant(Number.POSITIVE_INFINITY), fc.nat(3)),
  });

  test("are scaled so that the dearest pattern of a sold length is worth what the length costs", () => {
    fc.assert(
      fc.property(many(fc.tuple(worths, fc.array(stock, { minLength: 1, maxLength: 3 }))), (cases) => {
        for (const [given, lengths] of cases) {
          const { worth, held } = farley(given, lengths);
          const sold = lengths.filter(({ available }) => available === Number.POSITIVE_INFINITY);
          const scale = Math.min(
            1,
            ...sold.map(({ size, cost }) => cost / Math.max(1e-9, mostByTrial(given, size))),
          );
          worth.forEach((each, k) => {
            expectNear(each, scale * Math.max(0, given.worth[k] ?? 0), 1e-4, "worth");
          });
          const over = lengths
            .filter((one) => !sold.includes(one))
            .map(({ size, cost, available }) => {
              return available * Math.max(0, scale * mostByTrial(given, size) - cost);
            });
          expectNear(
            held,
            over.reduce((a, b) => a + b, 0),
            1e-3,
            "held",
          );
        }
      }),
      { numRuns: 15 },
    );
  });

  // By hand: seven of 3 on lengths of 10, three on each: 7/3 of a length, so 3; with two pieces at hand, one.
  test("count whole lengths, less what is at hand", () => {
    const sold = { size: 10, cost: 1, available: Number.POSITIVE_INFINITY };
    const whole = { sizes: [3], demand: [7], stock: [sold], costStep: 1 };
    expect(dualBound(whole, [1 / 3])).toBe(3);
    expect(dualBound(whole, [5])).toBe(3);
    expect(dualBound(whole, [1 / 7])).toBe(1);
    expect(dualBound(whole, [-1])).toBe(0);
    const atHand = { size: 10, cost: 0, available: 2 };
    expect(dualBound({ ...whole, stock: [sold, atHand] }, [1 / 3])).toBe(1);
    expect(dualBound({ ...whole, stock: [sold, { ...atHand, available: 9 }] }, [1 / 3])).toBe(0);
  });

  test("are no more than a cut to measure costs", () => {
    const whole = { sizes: [4, 3], demand: [2, 1], stock: [], toMeasure: [0.8, 0.6], costStep: 0 };
    expectNear(dualBound(whole, [5, 5]), 2 * 0.8 + 0.6, 1e-6);
    expectNear(dualBound(whole, [0.5, 5]), 2 * 0.5 + 0.6, 1e-6);
  });
});
