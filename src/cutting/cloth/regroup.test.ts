import { afterEach, expect, test, vi } from "vitest";
import { clothJob } from "../../../bench/cloth-jobs.ts";
import { givenCloth } from "../../../test/cutting/given-cloth.ts";
import { chance } from "../chance.ts";
import { BoxDecoder } from "./box-decoder.ts";
import { stepGridOf } from "./grid.ts";
import type { ClothProblem } from "./index.ts";
import { LayerDecoder } from "./layer-decoder.ts";
import { layersOn } from "./layers-of.ts";
import { packed } from "./packing.ts";
import { regroup } from "./regroup.ts";

afterEach(() => {
  vi.restoreAllMocks();
});

/** Plans of a group between two pauses, three aims that fail among them: a fraction of a second on any machine. */
const MOST_BETWEEN = 200;

/** Pieces of 100 mm of cloth, each with where it lies, in millimetres. */
function laidOf(
  given: readonly (readonly [w: number, h: number, x: number, y: number])[],
  more: Partial<ClothProblem> = {},
) {
  const grid = stepGridOf(
    givenCloth(
      given.map(([w, h]) => ({ size: [w, h] })),
      [{}],
      more,
    ),
  );
  const packing = packed(grid, {
    x: Int32Array.from(given, ([, , x]) => 10 * x),
    y: Float64Array.from(given, ([, , , y]) => 10 * y),
    bolt: new Int16Array(given.length),
    w: Int32Array.from(grid.items, ({ w }) => w),
    h: Int32Array.from(grid.items, ({ h }) => h),
  });
  return { grid, packing, layers: layersOn(packing, 0) };
}

/** What a generator gives on its way and at its end. */
function allOf<T, R>(steps: Generator<T, R>): { on: T[]; end: R } {
  const on: T[] = [];
  for (let step = steps.next(); ; step = steps.next()) {
    if (step.done) return { on, end: step.value };
    on.push(step.value);
  }
}

test("of two layers drawn the one that wastes more is laid anew, and the other stays", () => {
  // The second wastes nothing; the first has 40 and 50 below each other that go beside each other.
  const { grid, packing, layers } = laidOf([
    [40, 30, 0, 30],
    [50, 30, 50, 0],
    [60, 20, 0, 60],
    [40, 20, 60, 60],
  ]);
  // As laid, the first two overlap in no cut across: one layer of 60 by hand.
  const [waste, full] = [
    { ...layers[0], items: [0, 1], y: 0, length: 600, area: 400 * 300 + 500 * 300 },
    layers.at(-1),
  ];
  if (full === undefined) throw new Error("no layer");
  for (const draws of [
    [0, 0.99],
    [0.99, 0],
  ]) {
    let n = 0;
    const always = chance(1);
    const draw = () => (n < 16 ? (draws[n++ % 2] as number) : always());
    const { end } = allOf(regroup({ grid, at: 0, stages: 3, draw }, packing, [waste, full]));
    expect([...(end?.used ?? [])]).toEqual([500]);
    expect([end?.y[0], end?.y[1], end?.y[2], end?.y[3]]).toEqual([200, 200, 0, 0]);
  }
});

test("what a layer wastes is its area less that of its pieces", () => {
  const { grid, packing } = laidOf([
    [50, 5, 0, 0],
    [40, 5, 50, 0],
    [50, 50, 0, 10],
    [30, 50, 50, 10],
    [20, 9, 80, 10],
  ]);
  const laidAnew = (a: { length: number; area: number }, b: { length: number; area: number }) => {
    const layers = [
      { items: [0, 1], y: 0, ...a },
      { items: [2, 3, 4], y: 100, ...b },
    ];
    const asked: number[] = [];
    const aims = vi.spyOn(LayerDecoder.prototype, "setLengths").mockImplementation(function (
      this: LayerDecoder,
    ) {
      asked.push(this.masks.count);
    });
    vi.spyOn(LayerDecoder.prototype, "lay").mockReturnValue(1);
    let n = 0;
    const always = chance(1);
    const draw = () => (n < 16 ? [0, 0.99][n++ % 2] : undefined) ?? always();
    allOf(regroup({ grid, at: 0, stages: 3, draw }, packing, layers));
    aims.mockRestore();
    return asked[0];
  };
  // By hand, on 1,000 steps: a little of a short layer against much of a long one, and the other way round.
  expect(laidAnew({ length: 100, area: 90_000 }, { length: 600, area: 500_000 })).toBe(3);
  expect(laidAnew({ length: 100, area: 10_000 }, { length: 600, area: 590_000 })).toBe(2);
  expect(laidAnew({ length: 600, area: 100_000 }, { length: 100, area: 90_000 })).toBe(2);
});

test("one piece alone is not laid anew", () => {
  const { grid, packing, layers } = laidOf([[40, 30, 0, 0]]);
  const { on, end } = allOf(regroup({ grid, at: 0, stages: 3, draw: () => 0 }, packing, layers));
  expect([on, end]).toEqual([[1], undefined]);
});

test("where less than two steps are to be gained, one aim is enough", () => {
  // 60 beside 60 finds no room; 50 long they waste 20, half of it a step of 10.
  const { grid, packing, layers } = laidOf([
    [60, 20, 0, 0],
    [60, 30, 0, 20],
  ]);
  expect(grid.stepY).toBe(100);
  const aims = vi.spyOn(LayerDecoder.prototype, "setLengths");
  const { end } = allOf(regroup({ grid, at: 0, stages: 3, draw: chance(1) }, packing, layers));
  expect(end).toBeUndefined();
  expect(aims.mock.calls.map(([lengths]) => Array.from(lengths))).toEqual([[400]]);
});

// By hand: 60 beside 60 finds no room. 60 long they waste 24 of it: half, a quarter and an eighth are aimed at.
test("after each failure half as much is aimed at, twice", () => {
  const { grid, packing, layers } = laidOf([
    [60, 23, 0, 0],
    [60, 37, 0, 23],
  ]);
  expect(grid.stepY).toBe(10);
  const aims = vi.spyOn(LayerDecoder.prototype, "setLengths");
  const { end } = allOf(regroup({ grid, at: 0, stages: 3, draw: chance(1) }, packing, layers));
  expect(end).toBeUndefined();
  expect(aims.mock.calls.map(([lengths]) => lengths[0])).toEqual([480, 540, 570]);
});

// By hand: 40 and 50 wide go beside each other, 40 long instead of 70. Lengths are whole steps of 10.
test("what is gained is where the next aim begins", () => {
  const { grid, packing, layers } = laidOf([
    [40, 30, 0, 0],
    [50, 40, 0, 30],
  ]);
  const aims = vi.spyOn(LayerDecoder.prototype, "setLengths");
  const { end } = allOf(regroup({ grid, at: 0, stages: 3, draw: chance(1) }, packing, layers));
  expect(end?.used[0]).toBe(400);
  // Half of what 70 waste over an area of 32 is a step: 60 is aimed at. Then 40 waste less than a step: one is tried.
  expect(aims.mock.calls.map(([lengths]) => lengths[0])).toEqual([600, 300]);
});

test("boxes take turns with layers only where there are no stages and no table", () => {
  const kinds = (more: Partial<ClothProblem>, stages: number | undefined, drawn: number) => {
    const { grid, packing, layers } = laidOf(
      [
        [60, 20, 0, 0],
        [60, 30, 0, 20],
      ],
      more,
    );
    const spies = [BoxDecoder, LayerDecoder].map((decoder) => vi.spyOn(decoder.prototype, "setLengths"));
    // Sixteen draws choose layers; the next chooses how they are laid.
    const always = chance(3);
    let n = 0;
    const draw = () => (++n <= 16 ? ((n - 1) % 4 < 2 ? 0 : 0.99) : n === 17 ? drawn : always());
    allOf(regroup({ grid, at: 0, stages, draw }, packing, layers));
    const used = spies.map((spy) => spy.mock.calls.length > 0);
    vi.restoreAllMocks();
    return used;
  };
  expect(kinds({}, undefined, 0.4)).toEqual([true, false]);
  expect(kinds({}, undefined, 0.5)).toEqual([false, true]);
  expect(kinds({}, 3, 0.4)).toEqual([false, true]);
  expect(kinds({ tableMm: 90 }, undefined, 0.4)).toEqual([false, true]);
});

test.each([500, 5000, 20_000])("among %d pieces a pause comes after a few plans of a group", (pieces) => {
  const grid = stepGridOf(clothJob({ seed: 2, pieces, each: 50 }));
  const [bolt] = grid.bolts;
  if (bolt === undefined) throw new Error("no bolt");
  // Each piece its own layer: something is always to be gained, and seldom at once.
  let top = 0;
  const ys = grid.items.map(({ h }) => {
    top += h;
    return top - h;
  });
  const packing = packed(grid, {
    x: new Int32Array(pieces),
    y: Float64Array.from(ys),
    bolt: new Int16Array(pieces),
    w: Int32Array.from(grid.items, ({ w }) => w),
    h: Int32Array.from(grid.items, ({ h }) => h),
  });
  let laid = 0;
  for (const decoder of [LayerDecoder, BoxDecoder]) {
    const { lay } = decoder.prototype;
    vi.spyOn(decoder.prototype, "lay").mockImplementation(function (
      this: LayerDecoder & BoxDecoder,
      limit: number,
    ) {
      laid++;
      return lay.call(this, limit);
    });
  }
  const layers = layersOn(packing, 0);
  const draw = chance(1);
  let counted = 0;
  let all = 0;
  for (let times = 0; times < 6; times++) {
    const group = regroup({ grid, at: 0, stages: 3, draw }, packing, layers);
    for (let step = group.next(); !step.done; step = group.next()) {
      expect(laid).toBeLessThanOrEqual(MOST_BETWEEN);
      all += laid;
      laid = 0;
      counted += step.value;
    }
    all += laid;
    laid = 0;
  }
  expect(all).toBeGreaterThan(300);
  // Counted by the share of all pieces that a group holds, at most 24 of them.
  expect(counted).toBeLessThanOrEqual((all * 24) / pieces + 6);
  expect(counted).toBeGreaterThan(0);
});
