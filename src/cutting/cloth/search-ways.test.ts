import fc from "fast-check";
import { afterEach, describe, expect, test, vi } from "vitest";
import { givenCloth, type Sized } from "../../../test/cutting/given-cloth.ts";
import { cheaperByBruteForce } from "../../../test/cutting/lay-by-brute-force.ts";
import { BoxDecoder } from "./box-decoder.ts";
import { type Bolt, type ClothProblem, ClothSearch } from "./index.ts";
import { LayerDecoder } from "./layer-decoder.ts";
import { LayerPrices } from "./layer-prices.ts";

afterEach(() => {
  vi.restoreAllMocks();
});

/** What is aimed at while a search goes on: pieces to be laid, and the lengths for them in millimetres. */
function aimsOf(search: ClothSearch, tries: number): { pieces: number; lengthsMm: number[] }[] {
  const { setLengths } = LayerDecoder.prototype;
  const aims: { pieces: number; lengthsMm: number[] }[] = [];
  vi.spyOn(LayerDecoder.prototype, "setLengths").mockImplementation(function (this: LayerDecoder, lengths) {
    aims.push({ pieces: this.masks.count, lengthsMm: Array.from(lengths, (steps) => steps / 10) });
    setLengths.call(this, lengths);
  });
  search.improve(tries);
  vi.restoreAllMocks();
  return aims;
}

/** Sizes that fill no layer as they come: with a search there is always something to gain. */
const sizesOf = (count: number): Sized[] =>
  Array.from({ length: count }, (_, n) => ({ size: [17 + ((n * 13) % 40), 21 + ((n * 29) % 50)] }));

describe("a few pieces", () => {
  test("are proved in every way to cost what trying every place finds, and no plan is cheaper", () => {
    const cm = (min: number, max: number) => fc.integer({ min, max }).map((n) => 10 * n);
    const sized = fc.record({ w: cm(2, 8), h: cm(1, 5), isFree: fc.boolean() });
    const cases = fc.sample(fc.array(sized, { minLength: 3, maxLength: 3 }), { numRuns: 40, seed: 20261201 });
    let byEveryWay = 0;
    for (const sizes of cases) {
      const problem = givenCloth(
        sizes.map(({ w, h, isFree }) => ({
          size: [w, h],
          ...(isFree ? { grain: "free" as const, nap: "either" as const } : {}),
        })),
      );
      const search = new ClothSearch(problem);
      search.improve(2000);
      const answer = search.answer();
      if (!("bolts" in answer)) throw new Error(answer.status);
      expect(answer.status).toBe("optimal");
      if (answer.bound.which !== "every-way") continue;
      byEveryWay++;
      expect(cheaperByBruteForce(problem, answer.cost)).toBeUndefined();
    }
    expect(byEveryWay).toBeGreaterThan(3);
  });

  test("are told to cost no less than the largest of them alone do, on the way", () => {
    // Nine pieces: half of them first, then two more each time. What is proved never sinks and never passes the plan.
    const search = new ClothSearch(givenCloth(sizesOf(9)));
    let least = search.lowerBound.cost;
    for (let n = 0; n < 200 && !search.done; n++) {
      search.improve(5);
      expect(search.lowerBound.cost).toBeGreaterThanOrEqual(least);
      expect(search.lowerBound.cost).toBeLessThanOrEqual(search.cost + 1e-9);
      least = search.lowerBound.cost;
    }
    expect(search.done).toBe(true);
    expect(search.lowerBound.which).toBe("every-way");
    expect(search.answer()).toMatchObject({ status: "optimal", gap: 0 });
  });
});

describe("cloth that is just enough", () => {
  // By hand: three lengths of 35, 26 and 39 mm on a bolt of 101: 37 + 39 + 24, 40 + 21 + 39, 21 + 17 + 23 + 39; of the
  // first the 39, of the last the 23 in two below each other.
  const sizes = [
    [37, 35],
    [39, 17],
    [40, 26],
    [21, 39],
    [21, 26],
    [24, 35],
    [17, 39],
    [39, 18],
    [23, 11],
    [23, 28],
    [39, 39],
    [39, 26],
  ] as const;

  test("is looked for where no first order finds it, and till then the fewest pieces are named that find no place", () => {
    const problem = givenCloth(
      sizes.map((size) => ({ size })),
      [{ lengthMm: 101 }],
      { cutting: { kind: "straight", stages: 4 } },
    );
    const search = new ClothSearch(problem);
    expect(search.cost).toBe(Number.POSITIVE_INFINITY);
    const none = search.answer();
    if (none.status !== "not-found") throw new Error(none.status);
    const left = none.pieceIds.map((id) => sizes[Number(id.slice(1))] ?? [0, 0]);
    expect(left.length).toBeGreaterThan(0);
    expect(left.length).toBeLessThan(6);
    expect(search.improve(2000)).toBe(false);
    expect(search.answer()).toMatchObject({ status: "optimal", cost: 100, bound: { cost: 100 } });
  });
});

describe("the ways of search have turns", () => {
  test("of 64 plans at first, twice as many each time, 1,024 at the most, as long as none gains", () => {
    const search = new ClothSearch(givenCloth(sizesOf(14), [{}], { cutting: { kind: "straight" } }));
    const { which } = search.lowerBound;
    for (let n = 0; n < 500 && search.lowerBound.which === which; n++) search.improve(1);
    expect(search.lowerBound.which).not.toBe(which);
    // Nothing is laid any more.
    const turns: { kind: string; plans: number }[] = [];
    for (const [kind, decoder] of [
      ["boxes", BoxDecoder],
      ["layers", LayerDecoder],
    ] as const) {
      vi.spyOn(decoder.prototype, "lay").mockImplementation(() => {
        const last = turns.at(-1);
        if (last?.kind === kind) last.plans++;
        else turns.push({ kind, plans: 1 });
        return 1;
      });
    }
    search.improve(6000);
    // The boxes have had their first turn with the bound. Before an aim is given up each pause comes after 64 plans.
    const expected = [64, 128, 128, 256, 256, 512, 512, 1024, 1024, 1024];
    expect(turns.slice(0, expected.length)).toEqual(
      expected.map((plans, n) => ({ kind: n % 2 === 0 ? "layers" : "boxes", plans })),
    );
  });
});

describe("a linear programme finds layers", () => {
  /** Whether it was asked, of so many pieces of so many sizes. */
  const isAsked = (
    count: number,
    sizes: number,
    more: Partial<ClothProblem> = {},
    bolts: readonly Partial<Bolt>[] = [{}],
    piece: (n: number) => Partial<Sized> = () => ({}),
  ) => {
    const pieces = Array.from({ length: count }, (_, n): Sized => {
      const k = n % sizes;
      return { size: [23 + 7 * (k % 5), 21 + k], ...piece(n) };
    });
    const search = new ClothSearch(givenCloth(pieces, bolts, more));
    const asked = vi.spyOn(LayerPrices.prototype, "setWorths");
    // It has its turn once strips have proved what they can.
    let after = 0;
    for (let n = 0; n < 60 && asked.mock.calls.length === 0 && after < 3; n++) {
      search.improve(20);
      if (search.lowerBound.which === "bars") after++;
    }
    const wanted = asked.mock.calls[0]?.[1];
    vi.restoreAllMocks();
    return wanted !== undefined && wanted.length > 0;
  };

  test("where there are 60 pieces and more, three of every two sizes, in three stages on plain cloth", () => {
    expect(isAsked(60, 40)).toBe(true);
    expect(isAsked(59, 30)).toBe(false);
    expect(isAsked(60, 41)).toBe(false);
    expect(isAsked(60, 20, { cutting: { kind: "straight" } })).toBe(true);
    expect(isAsked(60, 20, { cutting: { kind: "straight", stages: 2 } })).toBe(false);
    const flaws = [{ xMm: 0, yMm: 30, widthMm: 10, lengthMm: 10 }];
    expect(isAsked(60, 20, {}, [{ flaws }])).toBe(false);
    const repeat = { alongMm: 30, match: "straight" as const };
    const onRows = (apart: number) =>
      isAsked(60, 20, { repeat }, [{}], (n) => ({ start: { alongMm: apart * (n % 2) } }));
    expect(onRows(10)).toBe(false);
    // Where all begin at one place the cloth is one of whole rows.
    expect(onRows(0)).toBe(true);
  });

  test("of the cloth that is cut last: a remnant before it takes some", () => {
    const remnant = { lengthMm: 200, costPerMm: 0.5 };
    expect(isAsked(60, 20, {}, [remnant, {}])).toBe(false);
    expect(isAsked(90, 20, {}, [remnant, {}])).toBe(true);
    const flaws = [{ xMm: 0, yMm: 30, widthMm: 10, lengthMm: 10 }];
    expect(isAsked(90, 20, {}, [{ ...remnant, flaws }, {}])).toBe(true);
  });
});

describe("a search aims at less cloth", () => {
  test("than the best plan takes, by a third of what may be saved at the most, and less after each failure", () => {
    // Ten times as large: a millimetre is a small part of what may be saved.
    const large = sizesOf(14).map(({ size: [w, h] }, n): Sized => ({ size: [10 * w, 10 * h + (n % 2)] }));
    const cutting = { kind: "straight" as const, stages: 4 };
    const search = new ClothSearch(givenCloth(large, [{ widthMm: 1000 }], { cutting }));
    const { which } = search.lowerBound;
    // Strips prove more than areas do once all first plans are there; the first aim follows at once.
    for (let n = 0; n < 500 && search.lowerBound.which === which; n++) search.improve(1);
    const best = search.cost;
    const { cost: bound, which: strict } = search.lowerBound;
    expect(strict).not.toBe(which);
    // Nothing is laid any more: the best plan stays, and each aim fails.
    vi.spyOn(LayerDecoder.prototype, "lay").mockImplementation(() => 1);
    const { setLengths } = LayerDecoder.prototype;
    const savings: number[] = [];
    vi.spyOn(LayerDecoder.prototype, "setLengths").mockImplementation(function (this: LayerDecoder, lengths) {
      savings.push(best - (lengths[0] ?? 0) / 10);
      setLengths.call(this, lengths);
    });
    search.improve(40_000);
    expect(search.cost).toBe(best);
    // Of what lies between plan and bound 17.5 %, half as much each time, in whole millimetres, as all lengths are.
    const whole = best - bound;
    const least = 0.0005 * best;
    expect(least).toBeGreaterThan(1);
    const expected: number[] = [];
    let share = 0.175;
    for (; share * whole > least; share /= 2) expected.push(Math.floor(share * whole));
    // No less than a part of the cost is worth a try; then 8 %, and half as much each time again.
    expected.push(Math.floor(least), Math.floor(0.08 * whole), Math.floor(0.04 * whole));
    expect(expected.length).toBeGreaterThan(6);
    expect(savings.slice(0, expected.length)).toEqual(expected);
  });
});

describe("layers of many pieces", () => {
  /** Three beside each other on cloth of 100 mm, of lengths that leave something to gain. */
  const strips = (count: number): Sized[] =>
    Array.from({ length: count }, (_, n) => ({ size: [30 + (n % 2), 21 + ((n * 29) % 50)] }));
  const groupsOf = (
    pieces: readonly Sized[],
    bolts: readonly Partial<Bolt>[] = [{}],
    more: Partial<ClothProblem> = {},
  ) => {
    const search = new ClothSearch(givenCloth(pieces, bolts, more));
    return aimsOf(search, 300).filter((aim) => aim.pieces < pieces.length);
  };

  test("are laid anew a few at a time where there are 60 pieces, on plain cloth without flaws", () => {
    const groups = groupsOf(strips(60));
    expect(groups.length).toBeGreaterThan(0);
    for (const { pieces, lengthsMm } of groups) {
      // Of four layers at the most, each of three pieces; on no more than they took.
      expect(pieces).toBeGreaterThan(1);
      expect(pieces).toBeLessThanOrEqual(24);
      expect(lengthsMm[0]).toBeLessThan(4 * 71);
    }
    expect(groupsOf(strips(59))).toEqual([]);
    const flaws = [{ xMm: 0, yMm: 30, widthMm: 10, lengthMm: 10 }];
    expect(groupsOf(strips(60), [{ flaws }])).toEqual([]);
  });

  test("stay where a repeat says where each begins, or where there are less than eight of them", () => {
    const repeat = { alongMm: 30, match: "straight" as const };
    const onRows = strips(60).map((one, n) => ({ ...one, start: { alongMm: n % 2 === 0 ? 0 : 10 } }));
    expect(groupsOf(onRows, [{}], { repeat })).toEqual([]);
    // On cloth of 2 m sixty of these lie in a layer or two.
    expect(groupsOf(strips(60), [{ widthMm: 2000 }])).toEqual([]);
  });

  test("are those of the bolt that is cut last", () => {
    // A remnant takes the first, and may even have a flaw; the new cloth behind it may not.
    const flaws = [{ xMm: 0, yMm: 30, widthMm: 10, lengthMm: 10 }];
    const left = { lengthMm: 300, costPerMm: 0.5 };
    expect(groupsOf(strips(90), [{ ...left, flaws }, {}]).length).toBeGreaterThan(2);
    expect(groupsOf(strips(90), [left, { flaws }])).toEqual([]);
  });
});
