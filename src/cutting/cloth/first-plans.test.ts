import { describe, expect, test } from "vitest";
import { clothJob } from "../../../bench/cloth-jobs.ts";
import { endOf } from "../../../test/cutting/end-of.ts";
import { givenCloth, type Sized } from "../../../test/cutting/given-cloth.ts";
import { anneal } from "./anneal.ts";
import { ALL_LAID, type Decoder } from "./decoder.ts";
import { firstPacking } from "./first-packing.ts";
import { FitMasks } from "./fit-masks.ts";
import { type StepGrid, stepGridOf } from "./grid.ts";
import { type Bolt, type ClothProblem, type Piece, solveCloth } from "./index.ts";
import { layLayers } from "./lay-layers.ts";
import { layerColumns } from "./layer-columns.ts";
import { LayerDecoder } from "./layer-decoder.ts";

function problemOf(
  sizes: readonly Sized["size"][],
  bolts: readonly Partial<Bolt>[] = [{}],
  more: Partial<ClothProblem> = {},
  piece: (n: number) => Partial<Piece> = () => ({}),
): ClothProblem {
  return givenCloth(
    sizes.map((size, n) => ({ size, nap: "either", ...piece(n) })),
    bolts,
    more,
  );
}

const decoderOf = (grid: StepGrid, sequence = [0]) =>
  new LayerDecoder(grid, new FitMasks(grid.items), sequence, 3);

describe("a first plan", () => {
  // By hand: 50 and 49 with a gap of 1 are just 100; 50 and 50 are not.
  test("takes no more of a bolt than there is, the gap behind the last piece not among it", () => {
    const first = (length: number) => {
      const sizes = [
        [100, 50],
        [100, length],
      ] as const;
      const grid = stepGridOf(problemOf(sizes, [{ lengthMm: 100 }], { gapMm: 1 }));
      return endOf(firstPacking(grid, decoderOf(grid), 0))?.used[0];
    };
    expect([first(49), first(50)]).toEqual([1000, undefined]);
  });

  test("of hundreds of pieces tries lengths that grow faster each time", () => {
    const grid = stepGridOf(clothJob({ seed: 2, pieces: 500, each: 50 }));
    const lengths: number[] = [];
    const decoder = decoderOf(grid);
    const fake = Object.create(decoder) as Decoder;
    fake.setLengths = ([length]: ArrayLike<number> & number[]) => {
      lengths.push(length as number);
      decoder.setLengths([length as number]);
    };
    fake.lay = () => (lengths.length < 6 ? 1 : decoder.lay(Number.POSITIVE_INFINITY));
    firstPacking(grid, fake, 0).next();
    const steps = firstPacking(grid, fake, 0);
    lengths.length = 0;
    for (let n = 0; n < 5; n++) steps.next();
    const growths = lengths.slice(1).map((length, n) => length / (lengths[n] as number));
    // 6 %, then half as much again each time, and a step.
    [1.06, 1.09, 1.135, 1.2025].forEach((growth, n) => {
      expect(growths[n]).toBeGreaterThanOrEqual(growth);
      expect(growths[n]).toBeLessThan(growth + (2 * grid.stepY) / (lengths[n] as number));
    });
  });

  test("begins with the first choices, on a repeat before them with those that lose least to their place", () => {
    const choicesOf = (more: Partial<ClothProblem>) => {
      const sizes = [40, 35, 30, 60].map((w, n) => [w, 20 + 7 * n] as const);
      const grid = stepGridOf(problemOf(sizes, [{}], more, (n) => ({ start: { alongMm: 5 * n } })));
      const decoder = decoderOf(grid);
      const tried: number[] = [];
      const fake = Object.create(decoder) as Decoder;
      fake.lay = (limit) => {
        expect(new Set(decoder.bits).size).toBe(1);
        tried.push(decoder.bits[0] ?? -1);
        return decoder.lay(limit);
      };
      const steps = firstPacking(grid, fake, 0);
      for (let step = steps.next(); !step.done; step = steps.next());
      return [...new Set(tried)];
    };
    expect(choicesOf({})).toEqual([0, 1]);
    // Four lengths of a layer, each with the nearest first (from 4 on) or without.
    expect(choicesOf({ repeat: { alongMm: 50, match: "straight" } })).toEqual([4, 5, 0, 1]);
  });

  // By hand: the first comes from the lot of the second bolt; the other finds room on the first.
  test("looks on where a piece must come from another lot", () => {
    const bolts = [
      { lengthMm: 50, lot: "x" },
      { lengthMm: 50, lot: "y", costPerMm: 2 },
    ];
    const sizes = [
      [100, 45],
      [100, 40],
    ] as const;
    const problem = problemOf(sizes, bolts, { boundLots: { g: "y" } }, (n) =>
      n === 0 ? { lotGroup: "g" } : {},
    );
    const grid = stepGridOf(problem);
    const decoder = decoderOf(grid, [0, 1]);
    decoder.chosenLots.fill(1);
    decoder.setLengths([500, 500]);
    expect(decoder.lay(Number.POSITIVE_INFINITY)).toBe(ALL_LAID);
    expect([...decoder.bolt]).toEqual([1, 0]);
  });
});

describe("an order that is looked for", () => {
  const decoderFor = (count: number, lays: number[]): Decoder => {
    const grid = stepGridOf(problemOf(Array.from({ length: count }, (_, n) => [10, 10 + n] as const)));
    const decoder = Object.create(decoderOf(grid)) as Decoder;
    decoder.lay = () => lays.shift() ?? 100;
    return decoder;
  };

  test("is none of one piece, which has one place in it", () => {
    const steps = anneal(decoderFor(1, []), () => 0.9, 5);
    expect([steps.next(), steps.next()]).toEqual([
      { done: false, value: 1 },
      { done: true, value: false },
    ]);
    expect(anneal(decoderFor(1, [ALL_LAID]), () => 0.9, 5).next()).toEqual({ done: true, value: true });
  });

  test("may be found where a few pieces begin anew", () => {
    // The first, one try, and after the period of two a new beginning.
    const lays = [50, 60, ALL_LAID];
    expect(endOf(anneal(decoderFor(3, lays), () => 0.9, 2))).toBe(true);
    expect(lays).toEqual([]);
  });
});

describe("layers of columns that a programme finds", () => {
  test("hold no more than is wanted, and with the rest are a plan near the least that areas allow", () => {
    // A few sizes many times, and many a time or two: then no layer is wanted as a whole.
    for (const [grain, widths, lengths] of [
      ["fixed", 4, 3],
      ["free", 4, 3],
      ["fixed", 8, 5],
    ] as const) {
      const sizes = Array.from(
        { length: 70 },
        (_, n) => [23 + (40 / widths) * (n % widths), 31 + 6 * (n % lengths)] as const,
      );
      const grid = stepGridOf(problemOf(sizes, [{}], {}, () => ({ grain })));
      const width = grid.bolts[0]?.w ?? 0;
      const plan = endOf(layerColumns(grid, width));
      const held = plan.rest.map(() => 0);
      for (const { length, columns } of plan.layers) {
        expect(columns.reduce((sum, column) => sum + column.width, 0)).toBeLessThanOrEqual(width);
        for (const { types } of columns) {
          expect(types.reduce((sum, type) => sum + (plan.types[type]?.h ?? 0), 0)).toBeLessThanOrEqual(
            length,
          );
          for (const type of types) {
            const row = plan.types[type]?.row ?? -1;
            held[row] = (held[row] ?? 0) + 1;
          }
        }
      }
      const all = held.map((count, row) => count + (plan.rest[row] ?? 0));
      expect(all.reduce((a, b) => a + b, 0)).toBe(70);
      expect(plan.rest.reduce((a, b) => a + b, 0)).toBeLessThanOrEqual(12);
      const laid = layLayers(grid, 3, plan);
      const area = grid.items.reduce((sum, { w, h }) => sum + w * h, 0);
      expect(laid?.used[0]).toBeGreaterThanOrEqual(area / width);
      expect(laid?.used[0]).toBeLessThan((1.2 * area) / width);
    }
  });

  // By hand: a layer that is said to be 40 long and uses 30 gives way to the next at 30; what no layer holds comes last.
  test("lie below each other, each as long as what lies in it", () => {
    const grid = stepGridOf(
      problemOf(
        [
          [50, 30],
          [50, 20],
          [60, 10],
          [25, 35],
        ],
        [{}],
        {},
        (n) => (n === 3 ? { grain: "free" } : {}),
      ),
    );
    const type = (w: number, h: number, row: number, turned = false) => ({ w, h, row, turned });
    const plan = {
      layers: [
        {
          length: 400,
          columns: [
            { width: 500, types: [0] },
            { width: 500, types: [1] },
          ],
        },
        { length: 250, columns: [{ width: 350, types: [2] }] },
      ],
      types: [type(500, 300, 0), type(500, 200, 1), type(350, 250, 3, true)],
      rest: [0, 0, 1, 0],
    };
    const whole = { ...plan, types: [...plan.types, type(600, 100, 2)] };
    const laid = layLayers(grid, 3, whole);
    expect([...(laid?.x ?? [])]).toEqual([0, 500, 0, 0]);
    expect([...(laid?.y ?? [])]).toEqual([0, 0, 550, 300]);
    expect([...(laid?.h ?? [])]).toEqual([300, 200, 100, 250]);
    expect([...(laid?.bolt ?? [])]).toEqual([0, 0, 0, 0]);
    expect(laid?.used[0]).toBe(650);
  });
});

describe("what no layer holds", () => {
  const plan = { layers: [], types: [{ w: 400, h: 1200, turned: true, row: 0 }], rest: [2] };

  // By hand: 120 wide it lies on 100 only turned, which a first plan does not try.
  test("makes no plan where it finds no place as it is", () => {
    const gridOf = (width: number) =>
      stepGridOf(
        problemOf(
          [
            [width, 40],
            [width, 40],
          ],
          [{}],
          {},
          () => ({ grain: "free" }),
        ),
      );
    expect(layLayers(gridOf(120), 3, plan)).toBeUndefined();
    const narrow = { ...plan, types: [{ w: 900, h: 400, turned: false, row: 0 }] };
    expect(layLayers(gridOf(90), 3, narrow)?.used[0]).toBe(800);
  });
});

describe("the ways of search", () => {
  // Four round a hole, as a windmill: no cut goes from edge to edge, so no layers hold them on 30.
  test("of cloth that is cut freely prove nothing by layers", () => {
    const sizes = [
      [20, 10],
      [10, 20],
      [20, 10],
      [10, 19],
    ] as const;
    const answer = solveCloth(problemOf(sizes, [{ widthMm: 30 }], { cutting: { kind: "free" } }), 2000);
    if (!("bound" in answer)) throw new Error(answer.status);
    expect(answer.bound.which).not.toBe("every-way");
    const layers = solveCloth(problemOf(sizes, [{ widthMm: 30 }]), 2000);
    expect(layers).toMatchObject({ status: "optimal", cost: 39 });
  });
});
