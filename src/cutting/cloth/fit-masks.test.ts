import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { FitMasks, NO_FIT } from "./fit-masks.ts";

/** The same answers by looking at every place, one after the other. */
class Plain {
  readonly order: number[];
  readonly w: number[];
  readonly h: number[];
  readonly open: Set<number>;
  readonly skipped = new Set<number>();
  readonly #kindOf: readonly number[] | undefined;

  constructor(items: readonly Item[], kindOf: readonly number[] | undefined) {
    this.order = items.map((_, item) => item);
    this.w = items.map(({ w }) => w);
    this.h = items.map(({ h }) => h);
    this.open = new Set(this.order);
    this.#kindOf = kindOf;
  }

  #first(from: number, isGood: (w: number, h: number) => boolean, maySkip: boolean): number {
    const at = this.order.findIndex(
      (item, place) =>
        place >= from &&
        this.open.has(place) &&
        !(maySkip && this.skipped.has(this.#kindOf?.[item] ?? -1)) &&
        isGood(this.w[item] ?? 0, this.h[item] ?? 0),
    );
    return at;
  }

  nextFit(width: number, height: number, from: number): number {
    return this.#first(from, (w, h) => w <= width && h <= height, true);
  }

  bestFit(width: number, height: number): number {
    const fits = (w: number, h: number) => w <= width && h <= height;
    const whole = this.#first(0, (w, h) => w === width && h === height, false);
    if (whole >= 0) return whole;
    const side = this.#first(0, (w, h) => fits(w, h) && (w === width || h === height), false);
    return side >= 0 ? side : this.#first(0, fits, false);
  }

  skipAlike(place: number): void {
    if (this.#kindOf) this.skipped.add(this.#kindOf[this.order[place] ?? -1] ?? -1);
  }

  swap(p: number, q: number): void {
    [this.order[p], this.order[q]] = [this.order[q] ?? -1, this.order[p] ?? -1];
  }

  turn(place: number): void {
    const item = this.order[place] ?? -1;
    [this.w[item], this.h[item]] = [this.h[item] ?? 0, this.w[item] ?? 0];
  }
}

interface Item {
  w: number;
  h: number;
  turns: boolean;
}

/** Few sizes, so that many are equal; or sizes so large that several share a bucket of the look-up. */
const item = (scale: number) =>
  fc.record({
    w: fc.integer({ min: 1, max: 9 }).map((n) => n * scale + (scale > 1 ? n % 3 : 0)),
    h: fc.integer({ min: 1, max: 7 }).map((n) => n * scale + (scale > 1 ? n % 2 : 0)),
    turns: fc.boolean(),
  });
const itemsOf = (scale: number) => fc.array(item(scale), { minLength: 1, maxLength: 100 });
const items = fc.oneof(itemsOf(1), itemsOf(3), itemsOf(5000));

const what = fc.constantFrom(
  "close",
  "swap",
  "turn",
  "next",
  "next",
  "best",
  "best",
  "skip",
  "none",
  "open",
  "order",
);
const steps = fc.array(fc.tuple(what, fc.nat(999), fc.nat(999), fc.nat(999)), {
  minLength: 40,
  maxLength: 120,
});

function follow(own: readonly Item[], isKinds: boolean, moves: readonly [string, number, number, number][]) {
  // Equal sizes that do not turn are one kind, as the search has it.
  const keys = own.map(({ w, h, turns }, n) => (turns ? `own ${n}` : `${w} ${h}`));
  const numbers = [...new Set(keys)];
  const kindOf = isKinds ? keys.map((key) => numbers.indexOf(key)) : undefined;
  const masks = new FitMasks(own, kindOf && Int32Array.from(kindOf));
  const plain = new Plain(own, kindOf);
  masks.openAll();
  const count = own.length;
  const most = Math.max(...own.map(({ w, h }) => Math.max(w, h)));
  for (const [move, a, b, c] of moves) {
    const [p, q] = [a % count, b % count];
    const size = own[c % count] as Item;
    const [w, h] = [
      [size.w, size.h],
      [a % (most + 2), b % (most + 2)],
      [size.h, b % (most + 2)],
      [a % (most + 2), size.w],
    ][c % 4] as [number, number];
    if (move === "swap") {
      // What is skipped holds while nothing is moved.
      masks.skipNone();
      plain.skipped.clear();
      masks.swap(p, q);
      plain.swap(p, q);
    } else if (move === "turn") {
      if (!own[plain.order[p] ?? -1]?.turns) continue;
      masks.turn(p);
      plain.turn(p);
    } else if (move === "open") {
      masks.openAll();
      plain.order.forEach((_, place) => {
        plain.open.add(place);
      });
    } else if (move === "order") {
      const order = plain.order.toSorted((one, other) => ((one * 7 + a) % 11) - ((other * 7 + a) % 11));
      masks.setOrder(order);
      plain.order.splice(0, count, ...order);
      masks.skipNone();
      plain.skipped.clear();
    } else if (move === "close") {
      // Those in front first, as in a search.
      const place = c % 3 === 0 ? p : plain.nextFit(most, most, 0);
      if (place < 0) continue;
      masks.close(place);
      plain.open.delete(place);
    } else if (move === "skip") {
      masks.skipAlike(p);
      plain.skipAlike(p);
    } else if (move === "none") {
      masks.skipNone();
      plain.skipped.clear();
    } else if (move === "next") {
      expect(masks.nextFit(w, h, q)).toBe(plain.nextFit(w, h, q));
      expect(masks.nextFit(most, most, q)).toBe(plain.nextFit(most, most, q));
    } else if (plain.skipped.size === 0) {
      const found = plain.bestFit(w, h);
      expect(masks.bestFit(w, h)).toBe(found);
      expect(masks.fitFound).toBe(found < 0 ? NO_FIT : masks.fitOf(plain.order[found] ?? -1, w, h));
    }
  }
  expect([...masks.order]).toEqual(plain.order);
  expect([...masks.w]).toEqual(plain.w);
  expect([...masks.h]).toEqual(plain.h);
}

describe("items in their order", () => {
  test("the first that fits, or fills a side, is found as by looking at each", () => {
    fc.assert(
      fc.property(items, steps, (own, moves) => follow(own, false, moves)),
      { numRuns: 60 },
    );
  });

  test("those that cannot be told from one that was looked at are passed over", () => {
    fc.assert(
      fc.property(items, steps, (own, moves) => follow(own, true, moves)),
      { numRuns: 60 },
    );
  });

  // By hand: 70 places are three words; of the first 32 and of the rest each some fit.
  test("of those far apart in the order the first is found that fills most", () => {
    const none = { w: 9, h: 9, turns: false };
    const found = (fitting: Record<number, readonly [number, number]>) => {
      const masks = new FitMasks(
        Array.from({ length: 70 }, (_, place) => {
          const [w = 9, h = 9] = fitting[place] ?? [];
          return { ...none, w, h };
        }),
      );
      masks.openAll();
      const place = masks.bestFit(6, 5);
      return [place, masks.fitFound, masks.nextFit(6, 5, 0), masks.nextFit(6, 5, 34)];
    };
    const [NONE, SOME, SIDE, ALL] = [0, 1, 2, 3];
    expect(found({})).toEqual([-1, NONE, -1, -1]);
    expect(found({ 3: [2, 2], 40: [3, 3], 66: [1, 1], 69: [6, 9] })).toEqual([3, SOME, 3, 40]);
    expect(found({ 3: [2, 2], 40: [6, 3], 66: [4, 5] })).toEqual([40, SIDE, 3, 40]);
    expect(found({ 3: [4, 5], 40: [6, 3], 66: [2, 2] })).toEqual([3, SIDE, 3, 40]);
    expect(found({ 3: [6, 1], 40: [6, 5], 66: [6, 5] })).toEqual([40, ALL, 3, 40]);
    expect(found({ 35: [1, 1], 40: [6, 9], 66: [2, 5] })).toEqual([66, SIDE, 35, 35]);
    // As wide but too high, or as high but too wide, fills no side.
    expect(found({ 3: [6, 9], 40: [9, 5], 66: [2, 2] })).toEqual([66, SOME, 66, 66]);
  });

  test("the area is that of all of them, and those that turn are listed", () => {
    const masks = new FitMasks([
      { w: 2, h: 3, turns: true },
      { w: 4, h: 5, turns: false },
      { w: 1, h: 7, turns: true },
    ]);
    expect(masks.area).toBe(6 + 20 + 7);
    expect(masks.turning).toEqual([0, 2]);
  });
});
