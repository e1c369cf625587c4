import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type GridItem, modulo, type StepGrid } from "../grid.ts";
import { LayerPrices } from "../layer-prices.ts";
import { LargestAlone } from "./largest-alone.ts";
import { Layers } from "./layers.ts";

const ENDLESS = Number.POSITIVE_INFINITY;
const WIDTH = 12;

const item = fc.record({
  w: fc.integer({ min: 1, max: 8 }),
  h: fc.integer({ min: 1, max: 8 }),
  turns: fc.boolean(),
  phaseX: fc.integer({ min: 0, max: 2 }),
  phaseY: fc.integer({ min: 0, max: 3 }),
});
type Item = { w: number; h: number; turns: boolean; phaseX: number; phaseY: number };

interface Print {
  along: number;
  across: number;
  half: boolean;
}

function gridOf(items: readonly Item[], longestLayer: number, print?: Print): StepGrid {
  return {
    perMm: 10,
    slack: 0,
    gap: 0,
    items: items.map(
      ({ w, h, turns, phaseX, phaseY }): GridItem => ({
        piece: { id: "", shade: "", part: "", widthMm: w, lengthMm: h, grain: "free", nap: "either" },
        w,
        h,
        turns: turns && !print && w !== h,
        phaseX: print ? phaseX : -1,
        phaseY: print ? phaseY : -1,
        join: -1,
        lotGroup: -1,
      }),
    ),
    bolts: [
      {
        bolt: { id: "b", remnant: false, widthMm: WIDTH, flaws: [], costPerMm: 1 },
        w: WIDTH,
        h: ENDLESS,
        costPerStep: 1,
        lot: 0,
        rowY: 1,
        columnX: 1,
        flaws: [],
      },
    ],
    lotAreas: [],
    boundLots: [],
    joins: 0,
    stepY: 1,
    longestLayer,
    ...(print ? { lattice: print } : {}),
  };
}

function orders(list: readonly number[]): number[][] {
  if (list.length < 2) return [[...list]];
  return list.flatMap((one, at) => orders(list.toSpliced(at, 1)).map((rest) => [one, ...rest]));
}

/** Where the last of the layers that hold just these items may end, from y on: every order, every column, every turn. */
function leastEnd(grid: StepGrid, set: number, y: number, stages: number): number {
  const items = grid.items.flatMap((_, n) => (set & (1 << n) ? [n] : []));
  const { lattice } = grid;
  // A table that is shorter than a piece, and what the repeat loses before it, is no limit of that.
  const tallest = grid.items.reduce((most, { w, h, turns }) => Math.max(most, h, turns ? w : 0), 0);
  const longest = Math.max(grid.longestLayer, tallest + (lattice?.along ?? 0));
  let least = ENDLESS;
  const lay = (
    order: readonly number[],
    column: { x: number; right: number; y: number },
    end: number,
  ): void => {
    const [next, ...rest] = order;
    if (next === undefined) {
      least = Math.min(least, end);
      return;
    }
    const { w, h, turns, phaseX, phaseY } = grid.items[next] as GridItem;
    for (const [width, height] of turns
      ? [
          [w, h],
          [h, w],
        ]
      : [[w, h]]) {
      const starts =
        column.y === y || stages > 2 ? [column, { x: column.right, right: column.right, y }] : [];
      const news = stages > 2 ? starts : [{ x: column.right, right: column.right, y }];
      for (const from of news) {
        for (const skipped of lattice?.half ? [0, 1] : [0]) {
          let x = from.x;
          while (lattice && modulo(x - 1 - phaseX, lattice.across) !== 0) x++;
          x += skipped * (lattice?.across ?? 0);
          const columns = lattice ? (x - 1 - phaseX) / lattice.across : 0;
          const drop = lattice?.half && Math.abs(columns) % 2 === 1 ? lattice.along / 2 : 0;
          let top = from.y;
          while (lattice && modulo(top - 1 - phaseY - drop, lattice.along) !== 0) top++;
          const right = Math.max(from.right, x + (width ?? 0));
          const below = top + (height ?? 0);
          if (right > WIDTH || (from.y !== y && below - y > longest)) continue;
          lay(rest, { x: from.x, right, y: below }, Math.max(end, below));
        }
      }
    }
  };
  for (const order of orders(items)) lay(order, { x: 0, right: 0, y }, y);
  return least;
}

function endsFound(
  grid: StepGrid,
  stages: number,
  y: number,
  first: boolean,
  rest: number,
): Map<number, number> {
  const ends = new Map<number, number>();
  const layers = new Layers(grid, stages);
  const isWhole = layers.each({
    rest,
    y,
    bolt: grid.bolts[0] as StepGrid["bolts"][number],
    first,
    useful: () => true,
    emit: (taken, end, laid) => {
      ends.set(taken, Math.min(end, ends.get(taken) ?? ENDLESS));
      expect(laid.reduce((bits, one) => bits | (1 << one.item), 0)).toBe(taken);
      expect(Math.max(...laid.map((one) => one.y + one.h))).toBe(end);
      laid.forEach((a, n) => {
        expect(a.x >= 0 && a.x + a.w <= WIDTH && a.y >= y).toBe(true);
        for (const b of laid.slice(n + 1)) {
          const isClear = a.x + a.w <= b.x || b.x + b.w <= a.x || a.y + a.h <= b.y || b.y + b.h <= a.y;
          expect(isClear).toBe(true);
        }
      });
    },
  });
  expect(isWhole).toBe(true);
  return ends;
}

const few = fc.array(item, { minLength: 1, maxLength: 3 });
const small = fc.record({
  items: few,
  stages: fc.constantFrom(2, 3),
  longest: fc.constantFrom(ENDLESS, 9),
  y: fc.nat(3),
});

describe("the layers of a few pieces", () => {
  test("end where the best of all ways to lay the same pieces does", () => {
    fc.assert(
      fc.property(fc.array(small, { minLength: 5, maxLength: 5 }), (cases) => {
        for (const { items, stages, longest, y } of cases) {
          const grid = gridOf(items, longest);
          const all = (1 << items.length) - 1;
          const ends = endsFound(grid, stages, y, false, all);
          for (let set = 1; set <= all; set++) {
            const least = leastEnd(grid, set, y, stages);
            // Of equal pieces only the first is taken: another set of them is as good.
            if (ends.has(set)) expect(ends.get(set)).toBe(least);
            else {
              const sizes = (bits: number) =>
                grid.items
                  .flatMap(({ w, h, turns }, n) => (bits & (1 << n) ? [`${w} ${h} ${turns}`] : []))
                  .sort()
                  .join();
              const alike = [...ends].filter(([other]) => sizes(other) === sizes(set)).map(([, end]) => end);
              expect(Math.min(...alike)).toBe(least);
            }
          }
          const withFirst = endsFound(grid, stages, y, true, all & ~1);
          const lowest = items.length > 1 ? 2 : 0;
          for (const set of withFirst.keys()) expect(set & lowest).not.toBe(0);
        }
      }),
      { numRuns: 15 },
    );
  });

  test("do so on a repeat, in columns and in half drop", () => {
    const print = fc.record({
      along: fc.constantFrom(4, 6),
      across: fc.constantFrom(3, 4),
      half: fc.boolean(),
    });
    fc.assert(
      fc.property(fc.array(fc.tuple(small, print), { minLength: 3, maxLength: 3 }), (cases) => {
        for (const [{ items, stages, longest, y }, lattice] of cases) {
          const grid = gridOf(items, longest, lattice);
          const all = (1 << items.length) - 1;
          const ends = endsFound(grid, stages, y, false, all);
          const least = leastEnd(grid, all, y, stages);
          expect(ends.get(all) ?? ENDLESS).toBe(least);
        }
      }),
      { numRuns: 15 },
    );
  });

  test("take as long together as the best parting of them into layers", () => {
    fc.assert(
      fc.property(fc.array(small, { minLength: 4, maxLength: 4 }), (cases) => {
        for (const { items, stages, longest } of cases) {
          const grid = gridOf(items, longest);
          const known = new Map<number, number>([[0, 0]]);
          const lengthOf = (set: number): number => {
            const before = known.get(set);
            if (before !== undefined) return before;
            let least = ENDLESS;
            for (let part = set; part > 0; part = (part - 1) & set)
              least = Math.min(least, leastEnd(grid, part, 0, stages) + lengthOf(set & ~part));
            known.set(set, least);
            return least;
          };
          const alone = new LargestAlone(grid, stages, grid.bolts[0] as StepGrid["bolts"][number]);
          for (let set = (1 << items.length) - 1; set >= 0; set--)
            expect(alone.lengthOf(set)).toBe(lengthOf(set));
        }
      }),
      { numRuns: 15 },
    );
  });

  test("of many pieces count the nine largest alone", () => {
    const items = Array.from({ length: 12 }, (_, n) => ({
      w: WIDTH - (n === 4 ? 3 : 0),
      h: n === 4 || n === 7 || n === 9 ? 1 : 2 + n,
      turns: false,
      phaseX: 0,
      phaseY: 0,
    }));
    const grid = gridOf(items, ENDLESS);
    const alone = new LargestAlone(grid, 3, grid.bolts[0] as StepGrid["bolts"][number]);
    // Each as wide as the cloth or nearly: their lengths below each other, without the three small ones.
    const sum = items.reduce((all, { h }) => all + (h === 1 ? 0 : h), 0);
    expect(alone.lengthOf((1 << 12) - 1)).toBe(sum);
    expect(alone.lengthOf((1 << 4) | (1 << 7))).toBe(0);
  });
});

describe("layers priced by the worth of their pieces", () => {
  const priced = fc.record({
    sizes: fc.array(
      fc.tuple(
        fc.integer({ min: 2, max: 8 }),
        fc.integer({ min: 2, max: 9 }),
        fc.integer({ min: 1, max: 20 }),
      ),
      {
        minLength: 1,
        maxLength: 5,
      },
    ),
    length: fc.integer({ min: 2, max: 18 }),
    above: fc.nat(30),
  });

  /** Stacks of pieces no wider than a column, any number of each; then columns side by side. */
  function mostWorth(sizes: readonly (readonly [number, number, number])[], length: number): number {
    const stack = (width: number) => {
      const most = Array.from({ length: length + 1 }, () => 0);
      for (let at = 1; at <= length; at++)
        for (const [w, h, worth] of sizes)
          if (w <= width && h <= at) most[at] = Math.max(most[at] ?? 0, (most[at - h] ?? 0) + worth);
      return Math.max(...most);
    };
    const most = Array.from({ length: WIDTH + 1 }, () => 0);
    for (let at = 1; at <= WIDTH; at++)
      for (const [w] of sizes)
        if (w <= at) most[at] = Math.max(most[at] ?? 0, (most[at - w] ?? 0) + stack(w));
    return Math.max(...most);
  }

  test("are the best that trial finds where all are wanted often, and none that is worth no more than asked", () => {
    fc.assert(
      fc.property(fc.array(priced, { minLength: 20, maxLength: 20 }), (cases) => {
        for (const { sizes, length, above } of cases) {
          const types = sizes.map(([w, h], row) => ({ w, h, turned: false, row }));
          const prices = new LayerPrices(types, WIDTH, 18);
          const rows = sizes.map(([, , worth]) => worth);
          for (const wanted of [99, 1]) {
            prices.setWorths(
              rows,
              rows.map(() => wanted),
            );
            const best = prices.best(length, above);
            const most = mostWorth(sizes, length);
            const worthOf = (best?.columns ?? []).reduce(
              (sum, column) => column.types.reduce((all, type) => all + (rows[type] ?? 0), sum),
              0,
            );
            if (wanted === 99) expect(worthOf).toBe(most > above ? most : 0);
            if (best === undefined) continue;
            expect(best.length).toBe(length);
            expect(best.columns.reduce((sum, { width }) => sum + width, 0)).toBeLessThanOrEqual(WIDTH);
            for (const { width, types: stack } of best.columns) {
              expect(stack.length).toBeGreaterThan(0);
              expect(Math.max(...stack.map((type) => types[type]?.w ?? 0))).toBe(width);
              expect(stack.reduce((sum, type) => sum + (types[type]?.h ?? 0), 0)).toBeLessThanOrEqual(length);
            }
          }
        }
      }),
      { numRuns: 15 },
    );
  });

  test("stack what is wanted once no more than once, and so as is worth most by trial of every choice", () => {
    const one = fc.tuple(
      fc.integer({ min: 1, max: 4 }),
      fc.integer({ min: 1, max: 9 }),
      fc.integer({ min: 1, max: 9 }),
    );
    const sizes = fc.array(one, { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(sizes, fc.integer({ min: 1, max: 18 }), (given, length) => {
        // A bolt just as wide as the widest: there is room for one column.
        const width = Math.max(...given.map(([w]) => w));
        const types = given.map(([w, h], row) => ({
          w: Math.max(w, Math.ceil((width + 1) / 2)),
          h,
          turned: false,
          row,
        }));
        const worth = given.map(([, , each]) => each);
        let most = 0;
        for (let choice = 0; choice < 2 ** given.length; choice++) {
          const chosen = given.filter((_, n) => (choice >> n) & 1);
          const height = chosen.reduce((sum, [, h]) => sum + h, 0);
          if (height <= length)
            most = Math.max(
              most,
              chosen.reduce((sum, [, , each]) => sum + each, 0),
            );
        }
        const prices = new LayerPrices(types, width, 18);
        prices.setWorths(
          worth,
          given.map(() => 1),
        );
        const stack = prices.best(length, 0)?.columns.flatMap((column) => column.types) ?? [];
        expect(new Set(stack).size).toBe(stack.length);
        expect(stack.reduce((sum, type) => sum + (worth[type] ?? 0), 0)).toBe(most);
      }),
      { numRuns: 100 },
    );
  });
});
