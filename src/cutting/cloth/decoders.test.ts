import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { anyCloth } from "../../../test/cutting/any-cloth.ts";
import { givenCloth, type Sized } from "../../../test/cutting/given-cloth.ts";
import { BoxDecoder } from "./box-decoder.ts";
import { ALL_LAID, type Decoder } from "./decoder.ts";
import { FitMasks } from "./fit-masks.ts";
import { type StepGrid, stepGridOf } from "./grid.ts";
import { type ClothProblem, type Piece, type Placement, planByHand } from "./index.ts";
import { LayerDecoder } from "./layer-decoder.ts";

/** Numbers from 0 up to a limit, drawn beforehand. */
type Draw = (below: number) => number;
const drawFrom = (numbers: readonly number[]): Draw => {
  let at = 0;
  return (below) => (numbers[at++ % numbers.length] ?? 0) % below;
};
const draws = fc.array(fc.nat(9973), { minLength: 30, maxLength: 60 }).map((list) => () => drawFrom(list));

function shuffle(decoder: Decoder, draw: Draw): void {
  const { masks, bits, choices, chosenLots, lotChoices } = decoder;
  for (let place = masks.count - 1; place > 0; place--) masks.swap(place, draw(place + 1));
  for (const item of masks.turning) if (draw(2) === 1) masks.turn(masks.order.indexOf(item));
  bits.forEach((_, item) => {
    bits[item] = draw(choices);
  });
  lotChoices.forEach((lots, group) => {
    chosenLots[group] = lots[draw(lots.length + 1)] ?? -1;
  });
}

/** Of the cloth that may be cut all is laid or lost, and what is laid can be cut so, by the check of plans. */
function expectSound(
  problem: ClothProblem,
  grid: StepGrid,
  decoder: Decoder,
  lengths: readonly number[],
): void {
  decoder.setLengths(lengths);
  const { masks, bolt } = decoder;
  const lost = decoder.lay(Number.POSITIVE_INFINITY);
  const laid = grid.items.flatMap((_, item) => ((bolt[item] ?? -1) >= 0 ? [item] : []));
  expect(lost === ALL_LAID).toBe(laid.length === grid.items.length);
  if (lost !== ALL_LAID) {
    const cloth = grid.bolts.reduce((sum, { w }, at) => {
      const length = lengths[at] ?? 0;
      return length > 0 ? sum + w * (length + grid.gap) : sum;
    }, 0);
    const covered = laid.reduce((sum, item) => sum + (masks.w[item] ?? 0) * (masks.h[item] ?? 0), 0);
    expect(Math.abs(cloth - covered - lost)).toBeLessThan(1e-9 * cloth);
    // What is told of a plan that is broken off is more than was allowed, and no more than all.
    for (const share of [0, 0.3, 0.9]) {
      const told = decoder.lay(share * lost);
      expect(told).toBeGreaterThan(share * lost);
      expect(told).toBeLessThanOrEqual(lost * (1 + 1e-12));
    }
    expect(decoder.lay(lost)).toBe(lost);
  }
  const { perMm, gap } = grid;
  const onBolts = grid.bolts.map(({ bolt: own }, at) => ({
    boltId: own.id,
    placements: laid.flatMap((item): Placement[] => {
      if (bolt[item] !== at) return [];
      const [w, h] = [masks.w[item] ?? 0, masks.h[item] ?? 0];
      const isTurned = w !== grid.items[item]?.w || h !== grid.items[item]?.h;
      const y = decoder.y[item] ?? 0;
      expect(y + h).toBeLessThanOrEqual((lengths[at] ?? 0) + gap);
      return [
        {
          pieceId: grid.items[item]?.piece.id ?? "",
          xMm: (decoder.x[item] ?? 0) / perMm,
          yMm: y / perMm,
          widthMm: (w - gap) / perMm,
          lengthMm: (h - gap) / perMm,
          turn: isTurned ? 90 : 0,
        },
      ];
    }),
  }));
  const ids = new Set(laid.map((item) => grid.items[item]?.piece.id));
  const pieces = problem.pieces.filter(({ id }) => ids.has(id));
  const bound = { cost: 0, which: "area" as const };
  // Cloth cut freely has no cuts where none go from edge to edge; layers always have.
  expect(planByHand({ ...problem, pieces }, onBolts, bound).faults).toEqual([]);
  grid.items.forEach(({ lotGroup }, item) => {
    const chosen = lotGroup < 0 ? -1 : (decoder.chosenLots[lotGroup] ?? -1);
    if (chosen >= 0 && (bolt[item] ?? -1) >= 0) expect(grid.bolts[bolt[item] ?? -1]?.lot).toBe(chosen);
  });
}

describe("any order and choices", () => {
  test("give layers that can be cut in their stages, round flaws, on the repeat and by lots; the rest is lost", () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(anyCloth, draws), { minLength: 4, maxLength: 4 }), (cases) => {
        for (const [given, begin] of cases) {
          if (given.pieces.length === 0) continue;
          const draw = begin();
          const stages = 2 + draw(4);
          const { boundLots: _, ...free } = given;
          const problem = { ...free, cutting: { kind: "straight" as const, stages } };
          const grid = stepGridOf(problem);
          const sequence = grid.bolts.map((_, at) => at);
          if (draw(2) === 1) sequence.reverse();
          const decoder = new LayerDecoder(grid, new FitMasks(grid.items), sequence, stages);
          shuffle(decoder, draw);
          const tallest = grid.items.reduce((most, { w, h }) => Math.max(most, w, h), 0);
          const lengths = grid.bolts.map(({ h }) => Math.min(h - grid.gap, draw(4) * tallest + draw(999)));
          expectSound(problem, grid, decoder, lengths);
        }
      }),
      { numRuns: 40 },
    );
  });

  test("give boxes that can be cut from edge to edge without an end of stages", () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(anyCloth, draws), { minLength: 6, maxLength: 6 }), (cases) => {
        for (const [given, begin] of cases) {
          if (given.pieces.length === 0) continue;
          const draw = begin();
          const { repeat: _, tableMm: __, boundLots: ___, ...plain } = given;
          const problem: ClothProblem = {
            ...plain,
            bolts: [{ id: "new", remnant: false, widthMm: 700, flaws: [], costPerMm: 1 }],
            cutting: { kind: "straight" },
          };
          const grid = stepGridOf(problem);
          const decoder = new BoxDecoder(new FitMasks(grid.items), grid.bolts[0]?.w ?? 0, grid.gap);
          shuffle(decoder, draw);
          expectSound(problem, grid, decoder, [1 + draw(30_000)]);
        }
      }),
      { numRuns: 30 },
    );
  });

  test("give boxes the same plan whether one before it is known or not", () => {
    const side = fc.integer({ min: 1, max: 6 }).map((n) => 10 * n);
    const size = fc.tuple(side, side);
    fc.assert(
      fc.property(
        fc.array(size, { minLength: 2, maxLength: 40 }),
        fc.boolean(),
        draws,
        (sizes, turns, begin) => {
          const grid = plain(sizes, turns ? { grain: "free", nap: "either" } : {});
          const draw = begin();
          const known = new BoxDecoder(new FitMasks(grid.items), 1000, 0);
          let length = 1 + draw(4000);
          for (let step = 0; step < 60; step++) {
            move(known, draw);
            if (draw(20) === 0) length = draw(4) === 0 ? Number.POSITIVE_INFINITY : 1 + draw(4000);
            const fresh = likewise(known, new BoxDecoder(new FitMasks(grid.items), 1000, 0));
            for (const decoder of [known, fresh]) decoder.setLengths([length]);
            const told = fresh.lay(Number.POSITIVE_INFINITY);
            // A plan broken off between must leave nothing behind.
            const limit = told > 0 && draw(3) === 0 ? told * 0.9 : Number.POSITIVE_INFINITY;
            if (told > limit) expect(known.lay(limit)).toBeGreaterThan(limit);
            else {
              expect(known.lay(limit)).toBe(told);
              expect([known.x, known.y, known.bolt].map(laidOf(fresh))).toEqual(
                [fresh.x, fresh.y, fresh.bolt].map(laidOf(fresh)),
              );
              expect(known.bolt).toEqual(fresh.bolt);
            }
          }
        },
      ),
      { numRuns: 40 },
    );
  });
});

/** One of the small changes of the search: two places, the choice of an item, a turn; now and then many. */
function move({ masks, bits, choices }: Decoder, draw: Draw): void {
  const kind = draw(8);
  const item = draw(bits.length);
  if (kind < 2) bits[item] = draw(choices);
  else if (kind < 3 && masks.turning.length > 0) masks.turn(masks.order.indexOf(item));
  else if (kind < 7) masks.swap(draw(masks.count), draw(masks.count));
  else for (let place = 0; place < masks.count; place++) masks.swap(place, draw(masks.count));
}

/** The other decoder with the same order, turns and choices. */
function likewise(one: BoxDecoder, other: BoxDecoder): BoxDecoder {
  other.masks.setOrder(one.masks.order);
  one.masks.order.forEach((item, place) => {
    if (one.masks.w[item] !== other.masks.w[item]) other.masks.turn(place);
  });
  other.bits.set(one.bits);
  return other;
}

const laidOf =
  ({ bolt }: Decoder) =>
  (values: ArrayLike<number>): number[] =>
    Array.from(values).filter((_, item) => (bolt[item] ?? -1) >= 0);

/** Sizes of pieces on one endless bolt of 100 mm, a step a tenth. */
function plain(sizes: readonly Sized["size"][], more: Partial<Piece> = {}): StepGrid {
  return stepGridOf(
    givenCloth(
      sizes.map((size) => ({ size, ...more })),
      [{}],
      { cutting: { kind: "straight" } },
    ),
  );
}

interface Rect {
  x: number;
  y: number;
  w: number;
  h: number;
}
type Laid = Map<number, { x: number; y: number }>;

/** The first item that fills a rectangle, else the first that fits along a side of it, else the first that fits. */
function bestOf(grid: StepGrid, laid: Laid, { w, h }: Rect): number | undefined {
  const open = grid.items.map((_, item) => item).filter((item) => !laid.has(item));
  const fitting = open.filter((item) => (grid.items[item]?.w ?? 0) <= w && (grid.items[item]?.h ?? 0) <= h);
  const isWide = (item: number) => grid.items[item]?.w === w;
  const isLong = (item: number) => grid.items[item]?.h === h;
  return (
    fitting.find((item) => isWide(item) && isLong(item)) ??
    fitting.find((item) => isWide(item) || isLong(item)) ??
    fitting[0]
  );
}

/** Layers, columns, cells and so on as the words above `LayerDecoder` have it, each filled before the next. */
function byLayers(
  grid: StepGrid,
  bits: readonly number[],
  rect: Rect,
  level: number,
  stages: number,
  laid: Laid,
): void {
  if (rect.w <= 0 || rect.h <= 0 || level >= stages) return;
  const item = bestOf(grid, laid, rect);
  if (item === undefined) return;
  const { w, h } = grid.items[item] ?? { w: 0, h: 0 };
  const { x, y } = rect;
  laid.set(item, { x, y });
  if (level % 2 === 1) {
    byLayers(grid, bits, { x, y: y + h, w, h: rect.h - h }, level + 1, stages, laid);
    byLayers(grid, bits, { x: x + w, y, w: rect.w - w, h: rect.h }, level, stages, laid);
    return;
  }
  let length = h;
  const choice = bits[item] ?? 0;
  if (level === 0 && stages > 2 && choice === 3) length = rect.h;
  else if (level === 0 && stages > 2) {
    // One or two pieces below it, as the next ones would be chosen.
    let from = 0;
    for (let more = 0; more < choice; more++) {
      const room = { x, y: y + length, w, h: rect.h - length };
      const next =
        more === 0
          ? bestOf(grid, laid, room)
          : grid.items.findIndex((one, k) => k >= from && !laid.has(k) && one.w <= room.w && one.h <= room.h);
      if (next === undefined || next < 0) break;
      length += grid.items[next]?.h ?? 0;
      from = next + 1;
    }
  }
  if (length > h) byLayers(grid, bits, { x, y: y + h, w, h: length - h }, level + 2, stages, laid);
  byLayers(grid, bits, { x: x + w, y, w: rect.w - w, h: length }, level + 1, stages, laid);
  byLayers(grid, bits, { x, y: y + length, w: rect.w, h: rect.h - length }, level, stages, laid);
}

/** A piece in the corner, then what lies beside and below it; its bit says which of the two cuts goes through. */
function byBoxes(grid: StepGrid, bits: readonly number[], rect: Rect, laid: Laid): void {
  if (rect.w <= 0 || rect.h <= 0) return;
  const item = bestOf(grid, laid, rect);
  if (item === undefined) return;
  const { w, h } = grid.items[item] ?? { w: 0, h: 0 };
  const { x, y } = rect;
  laid.set(item, { x, y });
  const isAlong = bits[item] === 1;
  const beside = { x: x + w, y, w: rect.w - w, h: isAlong ? rect.h : h };
  const below = { x, y: y + h, w: isAlong ? w : rect.w, h: rect.h - h };
  for (const part of isAlong ? [below, beside] : [beside, below]) byBoxes(grid, bits, part, laid);
}

describe("the places of pieces", () => {
  const size = fc.tuple(fc.integer({ min: 1, max: 9 }), fc.integer({ min: 1, max: 9 }));
  const sized = fc.record({
    sizes: fc.array(size, { minLength: 1, maxLength: 9 }),
    bits: fc.array(fc.nat(3), { minLength: 9, maxLength: 9 }),
    stages: fc.integer({ min: 2, max: 5 }),
    length: fc.integer({ min: 5, max: 25 }),
  });
  const ten = (sizes: readonly (readonly [number, number])[]) =>
    plain(sizes.map(([w, h]) => [w * 10, h * 10] as const));

  function expectAt(grid: StepGrid, decoder: Decoder, length: number, laid: Laid): void {
    decoder.setLengths([length * 100]);
    decoder.lay(Number.POSITIVE_INFINITY);
    const places = grid.items.map((_, item) =>
      decoder.bolt[item] === 0 ? { x: decoder.x[item], y: decoder.y[item] } : undefined,
    );
    expect(places).toEqual(grid.items.map((_, item) => laid.get(item)));
  }

  test("in layers are those of filling each space before the next", () => {
    fc.assert(
      fc.property(fc.array(sized, { minLength: 20, maxLength: 20 }), (cases) => {
        for (const { sizes, bits, stages, length } of cases) {
          const grid = ten(sizes);
          const decoder = new LayerDecoder(grid, new FitMasks(grid.items), [0], stages);
          decoder.bits.set(bits.slice(0, sizes.length));
          const laid: Laid = new Map();
          byLayers(grid, bits, { x: 0, y: 0, w: 1000, h: length * 100 }, 0, stages, laid);
          expectAt(grid, decoder, length, laid);
        }
      }),
      { numRuns: 15 },
    );
  });

  test("in boxes are those of filling each space before the next", () => {
    fc.assert(
      fc.property(fc.array(sized, { minLength: 20, maxLength: 20 }), (cases) => {
        for (const { sizes, bits, length } of cases) {
          const grid = ten(sizes);
          const decoder = new BoxDecoder(new FitMasks(grid.items), 1000, 0);
          const own = bits.map((bit) => bit % 2);
          decoder.bits.set(own.slice(0, sizes.length));
          const laid: Laid = new Map();
          byBoxes(grid, own, { x: 0, y: 0, w: 1000, h: length * 100 }, laid);
          expectAt(grid, decoder, length, laid);
        }
      }),
      { numRuns: 15 },
    );
  });
});
