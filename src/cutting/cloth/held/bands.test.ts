import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { CutBlock } from "../cut-tree.ts";
import { modulo, stepGridOf } from "../grid.ts";
import type { Bolt, ClothProblem, Piece } from "../problem.ts";
import { bandOf, runsAcross } from "./bands.ts";
import { type ColumnAim, fillFree } from "./fill-strip.ts";

const WIDTH = 12;
const block = fc
  .record({
    x1: fc.nat(9),
    y1: fc.nat(9),
    w: fc.integer({ min: 1, max: 4 }),
    h: fc.integer({ min: 1, max: 4 }),
  })
  .map(({ x1, y1, w, h }): CutBlock => ({ x1, x2: Math.min(WIDTH, x1 + w), y1, y2: y1 + h }));
const isApart = (a: CutBlock, b: CutBlock) => a.x2 <= b.x1 || b.x2 <= a.x1 || a.y2 <= b.y1 || b.y2 <= a.y1;
const blocks = fc
  .array(block, { minLength: 1, maxLength: 5 })
  .map((list) => list.filter((one, n) => list.slice(0, n).every((other) => isApart(one, other))));

/** Blocks that overlap along one side, by way of others too. */
function together(list: readonly CutBlock[], from: "x1" | "y1", to: "x2" | "y2"): CutBlock[][] {
  let groups = list.map((one) => [one]);
  for (let again = true; again; ) {
    again = false;
    for (const a of groups) {
      const b = groups.find(
        (other) => other !== a && other.some((p) => a.some((q) => p[from] < q[to] && q[from] < p[to])),
      );
      if (!b) continue;
      groups = [...groups.filter((one) => one !== a && one !== b), [...a, ...b]];
      again = true;
      break;
    }
  }
  return groups;
}
const least = (list: readonly CutBlock[], side: keyof CutBlock) => Math.min(...list.map((one) => one[side]));
const most = (list: readonly CutBlock[], side: keyof CutBlock) => Math.max(...list.map((one) => one[side]));

describe("a band round held pieces", () => {
  test("is free where no column of held pieces lies, and in a column where no run of them does", () => {
    fc.assert(
      fc.property(
        fc.array(blocks, { minLength: 15, maxLength: 15 }),
        fc.nat(2),
        fc.nat(2),
        (cases, before, behind) => {
          for (const held of cases) {
            const y1 = least(held, "y1") - before;
            const y2 = most(held, "y2") + behind;
            const band = bandOf(held, WIDTH, y1, y2);
            expect([band.y1, band.y2]).toEqual([y1, y2]);
            const columns = together(held, "x1", "x2").map((column) => ({
              x1: least(column, "x1"),
              x2: most(column, "x2"),
              runs: together(column, "y1", "y2").map((run) => ({
                y1: least(run, "y1"),
                y2: most(run, "y2"),
              })),
            }));
            for (let x = 0; x < WIDTH; x++) {
              for (let y = y1; y < y2; y++) {
                const column = columns.find((one) => one.x1 <= x && x < one.x2);
                const isHeld = column?.runs.some((run) => run.y1 <= y && y < run.y2) === true;
                const areas = band.free.filter(
                  (one) => one.x1 <= x && x < one.x2 && one.y1 <= y && y < one.y2,
                );
                expect(areas.map((one) => one.columns)).toEqual(isHeld ? [] : [column === undefined]);
              }
            }
            for (const area of band.free) {
              expect(area.x2 > area.x1 && area.y2 > area.y1).toBe(true);
              expect(area.x1 >= 0 && area.x2 <= WIDTH && area.y1 >= y1 && area.y2 <= y2).toBe(true);
            }
          }
        },
      ),
      { numRuns: 15 },
    );
  });

  test("holds the runs that no cut across goes through, in their order", () => {
    fc.assert(
      fc.property(fc.array(blocks, { minLength: 15, maxLength: 15 }), (cases) => {
        for (const held of cases) {
          const runs = together(held, "y1", "y2").sort((a, b) => least(a, "y1") - least(b, "y1"));
          expect(
            runsAcross(held).map(({ x1, x2, y1, y2, blocks: own }) => [x1, x2, y1, y2, own.length]),
          ).toEqual(
            runs.map((run) => [
              least(run, "x1"),
              most(run, "x2"),
              least(run, "y1"),
              most(run, "y2"),
              run.length,
            ]),
          );
        }
      }),
      { numRuns: 15 },
    );
  });
});

const piece: Omit<Piece, "id" | "widthMm" | "lengthMm"> = {
  shade: "s",
  part: "face",
  grain: "free",
  nap: "either",
};
function problemOf(
  pieces: readonly Partial<Piece>[],
  bolt: Partial<Bolt>,
  more: Partial<ClothProblem>,
): ClothProblem {
  return {
    id: "strip",
    bolts: [{ id: "b", remnant: false, widthMm: 1.2, flaws: [], costPerMm: 1, ...bolt }],
    pieces: pieces.map((one, n) => ({ ...piece, widthMm: 0.1, lengthMm: 0.1, ...one, id: `p${n}` })),
    gapMm: 0,
    cutting: { kind: "straight", stages: 3 },
    keep: { widthMm: 1, lengthMm: 1 },
    seed: 1,
    ...more,
  };
}

/** Sizes in tenths of a millimetre: a step each. */
const sized = fc.record({
  w: fc.integer({ min: 1, max: 8 }),
  h: fc.integer({ min: 1, max: 8 }),
  isFixed: fc.boolean(),
});
const area = fc
  .record({
    x1: fc.nat(6),
    y1: fc.nat(9),
    w: fc.integer({ min: 1, max: 6 }),
    h: fc.integer({ min: 1, max: 14 }),
  })
  .map(({ x1, y1, w, h }) => ({ x1, x2: x1 + w, y1, y2: y1 + h }));

const piecesOf = (sizes: readonly { w: number; h: number; isFixed: boolean }[]) =>
  sizes.map(({ w, h, isFixed }) => ({
    widthMm: w / 10,
    lengthMm: h / 10,
    ...(isFixed ? { grain: "fixed" as const } : {}),
  }));

describe("what is free in a band", () => {
  test("is filled by the pieces that cover the most of it in one stack, as trying every choice finds", () => {
    const one = fc.tuple(fc.array(sized, { minLength: 1, maxLength: 6 }), area);
    fc.assert(
      fc.property(fc.array(one, { minLength: 15, maxLength: 15 }), (cases) => {
        for (const [sizes, strip] of cases) {
          // The smallest piece makes a step of every length.
          const grid = stepGridOf(problemOf([...piecesOf(sizes), {}], {}, {}));
          const [bolt] = grid.bolts;
          if (bolt === undefined) throw new Error("no bolt");
          const items = sizes.map((_, n) => n);
          const width = strip.x2 - strip.x1;
          const length = strip.y2 - strip.y1;
          const visit = (n: number, left: number): number => {
            const size = sizes[n];
            if (size === undefined) return 0;
            const { w, h, isFixed } = size;
            const ways = [[w, h], ...(isFixed ? [] : [[h, w]])].filter(([across = 0]) => across <= width);
            // The way that takes less of the length.
            const own = Math.min(...ways.map(([, along = 0]) => along));
            const without = visit(n + 1, left);
            return own <= left ? Math.max(without, w * h + visit(n + 1, left - own)) : without;
          };
          const places = fillFree(grid, bolt, { ...strip, columns: false }, items, "full");
          const covered = places.reduce(
            (sum, { item }) => sum + (sizes[item]?.w ?? 0) * (sizes[item]?.h ?? 0),
            0,
          );
          expect(covered).toBe(visit(0, length));
          expectWithin(places, sizes, strip);
        }
      }),
      { numRuns: 15 },
    );
  });

  function expectWithin(
    places: readonly { item: number; x: number; y: number; turned: boolean }[],
    sizes: readonly { w: number; h: number; isFixed: boolean }[],
    strip: CutBlock,
  ): CutBlock[] {
    expect(new Set(places.map(({ item }) => item)).size).toBe(places.length);
    const laid = places.map(({ item, x, y, turned }): CutBlock => {
      const { w, h, isFixed } = sizes[item] ?? { w: 0, h: 0, isFixed: true };
      if (turned) expect(isFixed).toBe(false);
      return turned ? { x1: x, x2: x + h, y1: y, y2: y + w } : { x1: x, x2: x + w, y1: y, y2: y + h };
    });
    laid.forEach((a, n) => {
      expect(a.x1 >= strip.x1 && a.x2 <= strip.x2 && a.y1 >= strip.y1 && a.y2 <= strip.y2).toBe(true);
      for (const b of laid.slice(n + 1)) expect(isApart(a, b)).toBe(true);
    });
    return laid;
  }

  test("beside held pieces is cut along into columns until nothing more fits", () => {
    const one = fc.tuple(
      fc.array(sized, { minLength: 1, maxLength: 7 }),
      area,
      fc.constantFrom("dense", "full"),
    );
    fc.assert(
      fc.property(fc.array(one, { minLength: 15, maxLength: 15 }), (cases) => {
        for (const [sizes, strip, aim] of cases) {
          const grid = stepGridOf(problemOf([...piecesOf(sizes), {}], {}, {}));
          const [bolt] = grid.bolts;
          if (bolt === undefined) throw new Error("no bolt");
          const items = sizes.map((_, n) => n);
          const places = fillFree(grid, bolt, { ...strip, columns: true }, items, aim as ColumnAim);
          const laid = expectWithin(places, sizes, strip);
          const end = Math.max(strip.x1, ...laid.map(({ x2 }) => x2));
          sizes.forEach(({ w, h, isFixed }, n) => {
            if (places.some(({ item }) => item === n)) return;
            const fits = (across: number, along: number) =>
              across <= strip.x2 - end && along <= strip.y2 - strip.y1;
            expect(fits(w, h) || (!isFixed && fits(h, w))).toBe(false);
          });
        }
      }),
      { numRuns: 15 },
    );
  });

  test("on a print or beside flaws is filled largest first, each at the next place that is right and clear", () => {
    const step = { alongMm: 0.6, acrossMm: 0.3, match: "straight" as const };
    const one = fc.record({
      sizes: fc.array(sized, { minLength: 1, maxLength: 5 }),
      strip: area,
      flaw: block,
      isPrint: fc.boolean(),
    });
    fc.assert(
      fc.property(fc.array(one, { minLength: 15, maxLength: 15 }), (cases) => {
        for (const { sizes, strip, flaw, isPrint } of cases) {
          const fixed = sizes.map((size) => ({ ...size, isFixed: true }));
          const flaws = [
            {
              xMm: flaw.x1 / 10,
              yMm: flaw.y1 / 10,
              widthMm: (flaw.x2 - flaw.x1) / 10,
              lengthMm: (flaw.y2 - flaw.y1) / 10,
            },
          ];
          const start = { alongMm: 0.2, acrossMm: 0.1 };
          const pieces = piecesOf(fixed).map((each) => (isPrint ? { ...each, start } : each));
          const grid = stepGridOf(problemOf([...pieces, {}], { flaws }, isPrint ? { repeat: step } : {}));
          const [bolt] = grid.bolts;
          if (bolt === undefined) throw new Error("no bolt");
          const isRight = (x: number, y: number) =>
            !isPrint || (modulo(x - 1, 3) === 0 && modulo(y - 2, 6) === 0);
          // Step by step: each piece, the largest first, at the first place below the last.
          const expected: [number, number, number][] = [];
          let y = strip.y1;
          const bySize = fixed.map((_, n) => n).sort((a, b) => sizeOf(b) - sizeOf(a) || a - b);
          function sizeOf(n: number) {
            return (fixed[n]?.w ?? 0) * (fixed[n]?.h ?? 0);
          }
          const isMet = flaw.x1 < strip.x2 && flaw.x2 > strip.x1 && flaw.y1 < strip.y2 && flaw.y2 > strip.y1;
          for (const n of bySize) {
            const { w, h } = fixed[n] ?? { w: 0, h: 0 };
            let x = strip.x1;
            while (isPrint && modulo(x - 1, 3) !== 0) x++;
            let at = y;
            const isClear = () => isApart({ x1: x, x2: x + w, y1: at, y2: at + h }, flaw);
            while (at + h <= strip.y2 && !(isRight(x, at) && isClear())) at++;
            if (x + w > strip.x2 || at + h > strip.y2) continue;
            expected.push([n, x, at]);
            y = at + h;
          }
          const places = fillFree(
            grid,
            bolt,
            { ...strip, columns: false },
            fixed.map((_, n) => n),
            "full",
          );
          const laid = expectWithin(places, fixed, strip);
          for (const each of laid) expect(isApart(each, flaw)).toBe(true);
          if (isPrint || isMet) expect(places.map((each) => [each.item, each.x, each.y])).toEqual(expected);
        }
      }),
      { numRuns: 15 },
    );
  });
});
