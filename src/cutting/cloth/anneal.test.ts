import { describe, expect, test } from "vitest";
import { anneal } from "./anneal.ts";
import { ALL_LAID, type Decoder } from "./decoder.ts";
import { FitMasks } from "./fit-masks.ts";

/** What a decoder was asked to lay: the most that may be lost, and the order, choices, widths and lots at that time. */
interface Asked {
  limit: number;
  order: number[];
  bits: number[];
  w: number[];
  lots: number[];
}

interface Given {
  sizes: readonly (readonly [w: number, h: number])[];
  turns?: boolean;
  lotChoices?: readonly (readonly number[])[];
  /** What each plan loses, one after the other; 100 where they have come to their end. */
  lost?: readonly number[];
  /** Draws one after the other; the last stays. */
  draws: readonly number[];
  period?: number;
}

/** A search on a decoder that only notes what it is asked. */
function searched({ sizes, turns = false, lotChoices = [], lost = [], draws, period = 1000 }: Given) {
  const asked: Asked[] = [];
  const masks = new FitMasks(sizes.map(([w, h]) => ({ w, h, turns })));
  const { count } = masks;
  const decoder: Decoder = {
    masks,
    lotChoices,
    bits: new Uint8Array(count),
    choices: 4,
    chosenLots: new Int32Array(lotChoices.length).fill(-1),
    x: new Int32Array(count),
    y: new Float64Array(count),
    bolt: new Int16Array(count),
    setLengths: () => {},
    lay: (limit) => {
      asked.push({
        limit,
        order: [...masks.order],
        bits: [...decoder.bits],
        w: [...masks.w],
        lots: [...decoder.chosenLots],
      });
      return lost[asked.length - 1] ?? 100;
    },
  };
  let n = 0;
  const draw = () => draws[Math.min(n++, draws.length - 1)] as number;
  return { asked, steps: anneal(decoder, draw, period), masks };
}

/** Goes on until so many plans were laid, or to the end. */
function layUntil({ asked, steps }: ReturnType<typeof searched>, count: number): void {
  while (asked.length < count && !steps.next().done);
}

/** Sizes that all differ: 100 wide and 100, 101, … long. */
const differing = (count: number) => Array.from({ length: count }, (_, n) => [100, 100 + n] as const);

describe("a worse plan is taken", () => {
  // By hand: 20 pieces have an area of 100 · (2,000 + 190) = 219,000. In a period of 10 a tenth of a mean piece by the
  // root of a hundredth, 0.01 / 20 of it all: 109.5. Half of that is drawn, at the square of what is left of the period.
  test("while it loses no more than a part of a mean piece that sinks to nothing over a period", () => {
    const search = searched({ sizes: differing(20), draws: [0.5], period: 10 });
    layUntil(search, 22);
    const left = [0.9, 0.8, 0.7, 0.6, 0.5, 0.4, 0.3, 0.2, 0.1, 1, 0.9];
    left.forEach((one, n) => {
      expect(search.asked[n + 1]?.limit).toBeCloseTo(100 + 0.5 * 109.5 * one ** 2, 9);
    });
    expect(search.asked[0]?.limit).toBe(Number.POSITIVE_INFINITY);
  });

  // By hand: two pieces of 20,100 together; a tenth of one would be 1,005 in a period of 1,000, four thousandths are 80.4.
  test("but never one that loses more than four thousandths of all", () => {
    const search = searched({ sizes: differing(2), draws: [0.5], period: 1000 });
    layUntil(search, 2);
    expect(search.asked[1]?.limit).toBeCloseTo(100 + 0.5 * 80.4 * 0.999 ** 2, 9);
  });

  // By hand, each a little more than may be lost, or just that: four pieces of 100 · 406 = 40,600 by 0.004, half of it.
  test("and the one after it may lose as much again; else the order is as before", () => {
    const sizes = differing(4);
    const most = 0.5 * 0.004 * 40_600 * 0.999 ** 2;
    // A far exchange of the places 3 and 0, then of 2 and 1.
    const moves = [0.5, 0.9, 0.99, 0, 0.5, 0.9, 0.5, 0.25];
    const outcome = (lost: number) => {
      const search = searched({ sizes, draws: moves, lost: [100, lost] });
      layUntil(search, 3);
      return search.asked;
    };
    const [, first, kept] = outcome(100 + most);
    expect(first?.order).toEqual([3, 1, 2, 0]);
    expect(first?.limit).toBe(100 + most);
    expect(kept?.order).toEqual([3, 2, 1, 0]);
    expect(kept?.limit).toBeGreaterThan(100 + most);
    const [, , undone] = outcome(100 + most + 1);
    expect(undone?.order).toEqual([0, 2, 1, 3]);
    expect(undone?.limit).toBeLessThan(100 + most);
  });
});

describe("the search for an order ends", () => {
  const layAll = (lost: readonly number[], count = 20) => {
    const search = searched({ sizes: differing(count), draws: [0.9], lost, period: 5 });
    let step = search.steps.next();
    while (!step.done) step = search.steps.next();
    return [step.value, search.asked.length];
  };

  test("once three periods have found nothing better, counted from the best", () => {
    // The first plan and sixteen tries; with a better one as the fourth try nineteen.
    expect(layAll([])).toEqual([false, 1 + 16]);
    expect(layAll([100, 100, 100, 100, 99])).toEqual([false, 1 + 19]);
    // As good is no better, and neither is what is worse than the best, though better than the last.
    expect(layAll([100, 100, 100, 100, 100.1, 100])).toEqual([false, 1 + 16]);
  });

  test("as soon as all are laid", () => {
    expect(layAll([ALL_LAID])).toEqual([true, 1]);
    expect(layAll([100, 100, ALL_LAID])).toEqual([true, 3]);
  });

  test.each([
    [20, 64],
    [100, 64],
    [200, 32],
    [6400, 1],
    [7000, 1],
  ])("or is paused: of %d pieces after %d plans", (count, plans) => {
    const sizes = Array.from({ length: count }, () => [50, 60] as const);
    const search = searched({ sizes, draws: [0.9], period: 1000 });
    expect(search.steps.next()).toEqual({ done: false, value: plans });
    expect(search.asked).toHaveLength(plans);
    search.steps.next();
    expect(search.asked).toHaveLength(2 * plans);
  });
});

describe("a few pieces", () => {
  test.each([
    [12, [5, 11]],
    [13, []],
  ])("begin in a new order with each period: %d of them at the plans %j", (count, plans) => {
    const search = searched({ sizes: differing(count), draws: [0.9], period: 5 });
    layUntil(search, 13);
    const anew = search.asked
      .slice(0, 13)
      .flatMap(({ limit }, n) => (n > 0 && limit === Number.POSITIVE_INFINITY ? [n] : []));
    expect(anew).toEqual(plans);
  });

  // By hand: every move makes the choice of the first of three pieces one of four higher. One try, then three at a time.
  test("after as many moves as there are pieces, whatever that loses, and go on from there", () => {
    const search = searched({ sizes: differing(3), draws: [0.1], lost: [100, 100, 200, 150], period: 2 });
    layUntil(search, 5);
    expect(search.asked.slice(0, 5).map(({ bits }) => bits[0])).toEqual([0, 1, 0, 1, 2]);
    const [, , anew, next, last] = search.asked.map(({ limit }) => limit);
    // A tenth of a mean piece of 10,100 by the root of two thousandths, a tenth of that drawn; half of the period on a
    // quarter.
    const most = 0.1 * 0.1 * Math.sqrt(0.002) * 10_100;
    expect(anew).toBe(Number.POSITIVE_INFINITY);
    expect(next).toBeCloseTo(200 + most, 9);
    expect(last).toBeCloseTo(150 + most / 4, 9);
  });
});

describe("from plan to plan", () => {
  const five = differing(5);
  /** The second plan that is laid: the first is as given. */
  const moved = (draws: readonly number[], more: Partial<Given> = {}, lost: readonly number[] = []) => {
    const search = searched({ sizes: five, draws: [0, ...draws], lost, ...more });
    layUntil(search, 2);
    return search.asked[1];
  };

  test("one choice becomes another, never the same", () => {
    // The third of five, by one and by three of four.
    expect(moved([0.29, 0.5, 0])?.bits).toEqual([0, 0, 1, 0, 0]);
    expect(moved([0.29, 0.5, 0.99])?.bits).toEqual([0, 0, 3, 0, 0]);
    expect(moved([0, 0.99, 0.5])?.bits).toEqual([0, 0, 0, 0, 2]);
  });

  test("or one piece that may be turned is turned", () => {
    const free = { turns: true };
    for (const kind of [0.3, 0.39]) {
      const asked = moved([kind, 0.7], free);
      expect([asked?.w, asked?.bits]).toEqual([
        [100, 100, 100, 103, 100],
        [0, 0, 0, 0, 0],
      ]);
    }
    expect(moved([0.4, 0.2, 0.2], free)?.w).toEqual([100, 100, 100, 100, 100]);
  });

  test("or a lot group is held to another of its lots", () => {
    const lots = { lotChoices: [[7], [8, 9]] };
    for (const kind of [0.3, 0.4, 0.42]) expect(moved([kind, 0.5, 0.5], lots)?.lots).toEqual([-1, 9]);
    expect(moved([0.43, 0.2, 0.2], lots)?.lots).toEqual([-1, -1]);
    // What may be turned goes before.
    expect(moved([0.39, 0.7], { ...lots, turns: true })).toMatchObject({ lots: [-1, -1] });
    expect(moved([0.4, 0.5, 0.5], { ...lots, turns: true })).toMatchObject({ lots: [-1, 9] });
  });

  test("or two pieces change places, near each other or anywhere", () => {
    // The place 1 and, of the four others behind it, round the end, the last: place 0.
    for (const kind of [0.3, 0.43, 0.64]) expect(moved([kind, 0.2, 0.99])?.order).toEqual([1, 0, 2, 3, 4]);
    expect(moved([0.43, 0.2, 0])?.order).toEqual([0, 2, 1, 3, 4]);
    for (const kind of [0.65, 0.99]) expect(moved([kind, 0.2, 0.99])?.order).toEqual([0, 4, 2, 3, 1]);
    // Of ten the farthest that is near lies six places on.
    const ten = { sizes: differing(10) };
    expect(moved([0.5, 0.1, 0.99], ten)?.order).toEqual([0, 7, 2, 3, 4, 5, 6, 1, 8, 9]);
  });

  test("but not two that are equal, as long as others are drawn", () => {
    const [a, b, c] = [
      [100, 100],
      [100, 100],
      [90, 100],
    ] as const;
    const sizes = [a, b, c];
    // The first two, then the first and the third.
    expect(moved([0.9, 0, 0.34, 0, 0.7], { sizes })?.order).toEqual([2, 1, 0]);
    // A piece and itself.
    expect(moved([0.9, 0.7, 0.7, 0, 0.7], { sizes })?.order).toEqual([2, 1, 0]);
    // As wide or as long alone is not equal.
    const wide = [a, [100, 90], c] as const;
    expect(moved([0.9, 0, 0.34, 0, 0.7], { sizes: wide })?.order).toEqual([1, 0, 2]);
    expect(moved([0.9, 0, 0.7, 0, 0.34], { sizes: wide })?.order).toEqual([2, 1, 0]);
    // After eight draws in vain the ninth stands.
    const pairs = Array.from({ length: 8 }, () => [0, 0.34]).flat();
    expect(moved([0.9, ...pairs, 0.34, 0.34], { sizes })?.order).toEqual([0, 1, 2]);
    expect(moved([0.9, ...pairs, 0, 0.34, 0, 0.7], { sizes })?.order).toEqual([1, 0, 2]);
    expect(moved([0.9, ...pairs.slice(2), 0, 0.7], { sizes })?.order).toEqual([2, 1, 0]);
  });

  test("what lost too much is taken back, whatever it was", () => {
    const outcome = (draws: readonly number[], more: Partial<Given> = {}) => {
      // The second move is an exchange of the last piece with itself: nothing.
      const search = searched({ sizes: five, draws: [0, ...draws, 0, 0.99], lost: [100, 101], ...more });
      layUntil(search, 3);
      const [first, second, third] = search.asked;
      const { limit: _, ...was } = second as Asked;
      const { limit: __, ...is } = third as Asked;
      const { limit: ___, ...before } = first as Asked;
      expect(was).not.toEqual(before);
      expect(is).toEqual(before);
    };
    outcome([0.1, 0.5, 0.5]);
    outcome([0.3, 0.5], { turns: true });
    outcome([0.4, 0, 0.5], { lotChoices: [[3, 4]] });
    outcome([0.5, 0.2, 0.5]);
    outcome([0.9, 0.2, 0.5]);
  });

  test("one piece alone may still be turned", () => {
    const search = searched({
      sizes: [[60, 40]],
      turns: true,
      draws: [0, 0.3, 0],
      lost: [100, 100, ALL_LAID],
    });
    let step = search.steps.next();
    while (!step.done) step = search.steps.next();
    expect(step.value).toBe(true);
    expect(search.asked.map(({ w }) => w[0]).slice(0, 2)).toEqual([60, 40]);
  });
});
