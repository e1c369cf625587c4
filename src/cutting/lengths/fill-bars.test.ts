import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { barsCost, type PatternBar, roomOn, TO_MEASURE } from "./bar-pattern.ts";
import { fillFirst } from "./fill-first.ts";
import { tidyBars } from "./tidy-bars.ts";
import type { WholeLengths } from "./whole-lengths.ts";

const ENDLESS = Number.POSITIVE_INFINITY;

const stock = fc.record({
  size: fc.integer({ min: 4, max: 30 }),
  cost: fc.integer({ min: 0, max: 6 }),
  available: fc.oneof(fc.constant(ENDLESS), fc.nat(3)),
});
const whole: fc.Arbitrary<WholeLengths> = fc
  .record({
    sizes: fc.uniqueArray(fc.integer({ min: 1, max: 25 }), { minLength: 1, maxLength: 6 }),
    counts: fc.array(fc.nat(4), { minLength: 6, maxLength: 6 }),
    stock: fc.array(stock, { minLength: 1, maxLength: 4 }),
    isMeasured: fc.boolean(),
  })
  .map(({ sizes, counts, stock, isMeasured }) => {
    const sorted = sizes.toSorted((a, b) => b - a);
    const demand = sorted.map((_, type) => counts[type] ?? 0);
    return {
      sizes: sorted,
      demand,
      stock,
      costStep: 0,
      ...(isMeasured ? { toMeasure: sorted.map((size) => size / 4) } : {}),
    };
  });
const many = fc.array(whole, { minLength: 20, maxLength: 20 });

/** Every cut is there once, no bar is overfull, and no more is taken of what is at hand than is there. */
function expectSound({ sizes, demand, stock }: WholeLengths, bars: readonly PatternBar[]): void {
  const counts = demand.map(() => 0);
  const taken = stock.map(() => 0);
  for (const { stock: at, types } of bars) {
    expect(types.length).toBeGreaterThan(0);
    for (const type of types) counts[type] = (counts[type] ?? 0) + 1;
    if (at === TO_MEASURE) expect(types).toHaveLength(1);
    else {
      taken[at] = (taken[at] ?? 0) + 1;
      const held = types.reduce((sum, type) => sum + (sizes[type] ?? 0), 0);
      expect(held).toBeLessThanOrEqual(stock[at]?.size ?? 0);
    }
  }
  expect(counts).toEqual(demand);
  stock.forEach(({ available }, at) => {
    expect(taken[at]).toBeLessThanOrEqual(available);
  });
}

/**
 * First-fit and best-fit decreasing written out from what they are (Johnson, Near-optimal bin packing algorithms, 1973),
 * cut by cut: what is at hand is open from the start, the shortest first; each kind of new length is tried as the one
 * to open, the cheapest where a cut does not fit it; bars are cut off the cheapest new length that holds them.
 */
function leastByFitting({ sizes, demand, stock, toMeasure }: WholeLengths): number | undefined {
  const cuts = demand.flatMap((count, type) => Array.from({ length: count }, () => type));
  const sold = stock.filter(({ available }) => available === ENDLESS);
  const cheapest = (size: number) =>
    sold
      .filter((one) => one.size >= size)
      .reduce((a, b) => (b.cost < a.cost ? b : a), {
        size: 0,
        cost: ENDLESS,
        available: 0,
      });
  let least = ENDLESS;
  for (const opener of sold.length > 0 ? sold : [undefined]) {
    for (const isBest of [false, true]) {
      const open = stock
        .filter(({ available }) => available !== ENDLESS)
        .toSorted((a, b) => a.size - b.size)
        .flatMap(({ size, cost, available }) =>
          Array.from({ length: available }, () => ({ room: size, used: 0, cost, isNew: false })),
        );
      let measured = 0;
      for (const type of cuts) {
        const size = sizes[type] ?? 0;
        const fitting = open.filter(({ room }) => room >= size);
        let bar = isBest ? fitting.toSorted((a, b) => a.room - b.room)[0] : fitting[0];
        if (bar === undefined) {
          const from = opener && opener.size >= size ? opener : cheapest(size);
          if (from.size === 0) {
            if (toMeasure === undefined) return undefined;
            measured += toMeasure[type] ?? 0;
            continue;
          }
          bar = { room: from.size, used: 0, cost: from.cost, isNew: true };
          open.push(bar);
        }
        bar.room -= size;
        bar.used += size;
      }
      const cost = open.reduce(
        (sum, bar) => sum + (bar.used === 0 ? 0 : bar.isNew ? cheapest(bar.used).cost : bar.cost),
        measured,
      );
      least = Math.min(least, cost);
    }
  }
  return least;
}

describe("a first filling", () => {
  test("is sound and costs what the better of first-fit and best-fit does", () => {
    fc.assert(
      fc.property(many, (cases) => {
        for (const one of cases) {
          const bars = fillFirst(one);
          const least = leastByFitting(one);
          expect(bars === undefined).toBe(least === undefined);
          if (bars === undefined || least === undefined) continue;
          expectSound(one, bars);
          expect(barsCost(one, bars)).toBeCloseTo(least, 9);
        }
      }),
      { numRuns: 15 },
    );
  });

  test("of a part of the demand and of the stock is that of a problem with no more of them", () => {
    fc.assert(
      fc.property(many, (cases) => {
        for (const one of cases) {
          const demand = one.demand.map((count) => count >> 1);
          const available = one.stock.map((each) =>
            each.available === ENDLESS ? ENDLESS : each.available >> 1,
          );
          const part = {
            ...one,
            demand,
            stock: one.stock.map((each, at) => ({ ...each, available: available[at] ?? 0 })),
          };
          expect(fillFirst(one, demand, available)).toEqual(fillFirst(part));
        }
      }),
      { numRuns: 5 },
    );
  });

  test("of thousands of cuts is first-fit alone", () => {
    // By hand: best-fit puts 4 behind 6 and 3 behind 7; first-fit puts what fits first.
    const of = (times: number): WholeLengths => ({
      sizes: [6, 5, 4],
      demand: [times, times, times],
      stock: [{ size: 10, cost: 1, available: ENDLESS }],
      costStep: 1,
    });
    for (const times of [10, 1000]) {
      const bars = fillFirst(of(times)) ?? [];
      expectSound(of(times), bars);
      // Sixes take the fours, fives lie two by two.
      expect(bars).toHaveLength(times + times / 2);
    }
  });
});

describe("tidied bars", () => {
  test("cost no more, hold the same, gather what is left, and come off the shortest stock that is free", () => {
    fc.assert(
      fc.property(many, fc.func(fc.nat(3)), (cases, pick) => {
        for (const one of cases) {
          const filled = fillFirst(one);
          if (filled === undefined) continue;
          // One cut of each bar on a bar of its own, where there is stock for it: more to be gathered.
          const bars = filled.flatMap((bar, at) => {
            const own = one.stock[bar.stock];
            const isSpread = own?.available === ENDLESS && bar.types.length > 1 && pick(at) > 0;
            if (!isSpread) return [bar];
            const [first, ...rest] = bar.types;
            return [
              { stock: bar.stock, types: [first ?? 0] },
              { stock: bar.stock, types: rest },
            ];
          });
          const before = structuredClone(bars);
          const tidied = tidyBars(one, bars);
          expect(bars).toEqual(before);
          expectSound(one, tidied);
          expect(barsCost(one, tidied)).toBeLessThanOrEqual(barsCost(one, bars) + 1e-9);
          const left = one.stock.map(({ available }) => available);
          for (const { stock } of tidied) if (stock >= 0) left[stock] = (left[stock] ?? 0) - 1;
          for (const bar of tidied) {
            const own = one.stock[bar.stock];
            if (own === undefined) continue;
            const held = own.size - roomOn(one, bar);
            const shorter = one.stock.some(
              ({ size, cost }, s) =>
                (left[s] ?? 0) > 0 && size >= held && size < own.size && cost === own.cost,
            );
            expect(shorter, "a shorter piece is free").toBe(false);
          }
        }
      }),
      { numRuns: 15 },
    );
  });

  const sold = { size: 10, cost: 1, available: ENDLESS };
  const tidy = (bars: readonly PatternBar[], stock: WholeLengths["stock"] = [sold]) =>
    tidyBars({ sizes: [6, 4, 3, 2, 1], demand: [9, 9, 9, 9, 9], stock, costStep: 1 }, bars);
  const on = (stock: number, ...types: number[]): PatternBar => ({ stock, types });

  test("a cut goes from the emptier bar to the fullest that has room for it, and a bar without cuts is not taken", () => {
    // 3 goes to the bar with 3 left, not to that with 4 left.
    expect(tidy([on(0, 0), on(0, 1, 2), on(0, 2)])).toEqual([on(0, 0), on(0, 1, 2, 2)]);
    expect(tidy([on(0, 1), on(0, 1)])).toEqual([on(0, 1), on(0, 1)]);
    expect(tidy([on(0, 0), on(0, 1)])).toEqual([on(0, 0, 1)]);
    expect(tidy([on(0, 0), on(0, 0)])).toEqual([on(0, 0), on(0, 0)]);
    // 4 and 2 stand apart from 6 and 3: the 2 finds no room of its size with the 6 and 3, the 1 does.
    expect(tidy([on(0, 0, 2), on(0, 1, 4)])).toEqual([on(0, 0, 2, 4), on(0, 1)]);
  });

  test("the emptiest bar gives first, wherever it stands", () => {
    // By hand: the 3 goes to the 6, and the 4 stays; if the 4 went first, the 3 would find no room.
    const [six, four, three] = [on(0, 0), on(0, 1), on(0, 2)];
    expect(tidy([four, three, six])).toEqual([four, on(0, 0, 2)]);
    expect(tidy([three, four, six])).toEqual([four, on(0, 0, 2)]);
    expect(tidy([six, four, three])).toEqual([on(0, 0, 2), four]);
  });

  test("what is bought to measure stays as it is", () => {
    expect(tidy([on(TO_MEASURE, 0), on(0, 1)])).toEqual([on(TO_MEASURE, 0), on(0, 1)]);
  });

  test("the shortest piece goes to what needs least, and only at the same cost", () => {
    const pieces = [
      sold,
      { size: 7, cost: 0, available: 1 },
      { size: 4, cost: 0, available: 1 },
      { size: 5, cost: 0, available: 1 },
    ];
    expect(tidy([on(1, 2)], pieces)).toEqual([on(2, 2)]);
    expect(tidy([on(1, 0)], pieces)).toEqual([on(1, 0)]);
    expect(tidy([on(0, 2)], pieces)).toEqual([on(0, 2)]);
    expect(tidy([on(1, 1), on(3, 2)], [...pieces.slice(0, 3), { size: 5, cost: 0, available: 2 }])).toEqual([
      on(3, 1),
      on(2, 2),
    ]);
  });

  test("of more than 600 are left as they are", () => {
    const bars = Array.from({ length: 601 }, (_, n) => on(0, 1 + (n % 2)));
    expect(tidy(bars)).toEqual(bars);
    // Threes find room beside fours.
    expect(tidy(bars.slice(1)).length).toBeLessThan(600);
  });
});
