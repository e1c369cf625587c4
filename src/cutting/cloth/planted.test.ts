import { describe, expect, test } from "vitest";
import { givenCloth } from "../../../test/cutting/given-cloth.ts";
import { chance } from "../chance.ts";
import { stepGridOf } from "./grid.ts";
import {
  type Bolt,
  type ClothCutPlan,
  type ClothProblem,
  ClothSearch,
  type HeldPiece,
  startClothSearch,
  verifyCloth,
} from "./index.ts";
import { layLayers } from "./lay-layers.ts";
import { layOutBolts } from "./lay-out.ts";
import { layerColumns } from "./layer-columns.ts";

/**
 * Jobs cut out of a whole cloth without waste: its length is the least that any plan takes, known without a search.
 * How near the search comes is counted in plans tried, the same on every machine.
 */
const WIDTH_MM = 1200;

interface Spot {
  xMm: number;
  yMm: number;
  widthMm: number;
  lengthMm: number;
}

/** A length cut across into layers, those along into columns, those across into pieces, all in steps of 20 mm. */
function planted(draw: () => number, layers: number, columns: number, cells: number): Spot[] {
  const parts = (whole: number, most: number) => {
    const count = 1 + Math.floor(draw() * most);
    const at = new Set([0, whole]);
    while (at.size < Math.min(count + 1, whole / 60))
      at.add(60 + 20 * Math.floor((draw() * (whole - 80)) / 20));
    const ends = [...at].sort((a, b) => a - b);
    return ends.slice(1).map((end, n) => ({ from: ends[n] ?? 0, size: end - (ends[n] ?? 0) }));
  };
  const spots: Spot[] = [];
  let yMm = 0;
  for (let n = 0; n < layers; n++) {
    const lengthMm = 200 + 20 * Math.floor(draw() * 30);
    for (const column of parts(WIDTH_MM, columns)) {
      for (const cell of parts(lengthMm, cells)) {
        spots.push({ xMm: column.from, widthMm: column.size, yMm: yMm + cell.from, lengthMm: cell.size });
      }
    }
    yMm += lengthMm;
  }
  return spots;
}

const endOf = (spots: readonly Spot[]) => Math.max(...spots.map(({ yMm, lengthMm }) => yMm + lengthMm));

const BOLT: Bolt = { id: "b", remnant: false, widthMm: WIDTH_MM, flaws: [], costPerMm: 1 };
function problemOf(
  sizes: readonly Pick<Spot, "widthMm" | "lengthMm">[],
  more: Partial<ClothProblem> = {},
): ClothProblem {
  return givenCloth(
    sizes.map(({ widthMm, lengthMm }) => ({ size: [widthMm, lengthMm] })),
    [BOLT],
    { keep: { widthMm: 200, lengthMm: 200 }, ...more },
  );
}

function planOf(search: Pick<ClothSearch, "answer">): ClothCutPlan {
  const answer = search.answer();
  if (!("bolts" in answer)) throw new Error(JSON.stringify(answer));
  return answer;
}

/** What plans cost beyond the whole cloth, as shares of it. */
function excess(
  seeds: readonly number[],
  [layers, columns, cells]: readonly [number, number, number],
  tries: number,
  change: (problem: ClothProblem, spots: readonly Spot[]) => ClothProblem = (problem) => problem,
): number[] {
  return seeds.map((seed) => {
    const spots = planted(chance(seed), layers, columns, cells);
    const problem = change(problemOf(spots), spots);
    const search = startClothSearch(problem);
    const least = endOf(spots);
    for (let n = 0; n < tries && search.cost > least + 1e-6 && !search.done; n += 100) search.improve(100);
    const plan = planOf(search);
    expect(verifyCloth(problem, plan)).toEqual([]);
    expect(plan.cost).toBeGreaterThanOrEqual(least - 1e-6);
    expect(plan.bound.cost).toBeLessThanOrEqual(least + 1e-6);
    return plan.cost / least - 1;
  });
}
const seeds = (count: number, from = 1) => Array.from({ length: count }, (_, n) => from + n);
const mean = (list: readonly number[]) => list.reduce((a, b) => a + b, 0) / list.length;
const missed = (list: readonly number[]) => list.filter((share) => share > 1e-9).length;

describe("a whole cloth cut apart is put together again", () => {
  test("of a few pieces, in three stages", () => {
    expect(missed(excess(seeds(12), [2, 3, 2], 1500))).toBe(0);
  });

  test("of a few pieces, with scissors or without a limit of stages", () => {
    const free = excess(seeds(8), [2, 3, 2], 3000, (problem) => ({ ...problem, cutting: { kind: "free" } }));
    const any = excess(seeds(8, 50), [2, 3, 2], 3000, (problem) => ({
      ...problem,
      cutting: { kind: "straight" },
    }));
    expect(missed([...free, ...any])).toBe(0);
  });

  test("of some pieces, turned or not", () => {
    const fixed = excess(seeds(3, 100), [2, 4, 3], 1500);
    const turned = excess(seeds(3, 200), [2, 3, 2], 1500, (problem) => ({
      ...problem,
      pieces: problem.pieces.map((one, n) => ({
        ...one,
        grain: "free",
        nap: "either",
        ...(n % 2 === 0 ? { widthMm: one.lengthMm, lengthMm: one.widthMm } : {}),
      })),
    }));
    expect(missed([...fixed, ...turned])).toBe(0);
  });

  test("of pieces from remnants and new cloth, the cheaper cloth first", () => {
    const shares = excess(seeds(6, 300), [3, 2, 2], 2000, (problem, spots) => {
      // The first layer is a remnant: it costs nothing, and the rest is as long as before without it.
      const first = spots.filter(({ yMm }) => yMm === 0);
      const lengthMm = Math.max(...first.map((one) => one.lengthMm));
      const left = { ...BOLT, id: "left", remnant: true, lengthMm };
      return { ...problem, bolts: [left, BOLT] };
    });
    expect(missed(shares)).toBe(0);
  });

  test("of many pieces in a few sizes", () => {
    const jobs = seeds(2, 400).map((seed) => {
      const spots = planted(chance(seed), 4, 3, 2);
      const end = endOf(spots);
      return Array.from({ length: 8 }, (_, n) =>
        spots.map((one) => ({ ...one, yMm: one.yMm + n * end })),
      ).flat();
    });
    const shares = jobs.map((spots) => {
      const search = new ClothSearch(problemOf(spots));
      search.improve(800);
      return planOf(search).cost / endOf(spots) - 1;
    });
    expect(mean(shares)).toBeLessThan(0.01);
  });

  test("round a piece that is held in its place", () => {
    const shares = excess(seeds(4, 500), [3, 2, 1], 200, (problem, spots) => {
      const [spot] = spots.slice(-1);
      const held: HeldPiece[] = spot
        ? [{ pieceId: `p${spots.length - 1}`, boltId: "b", xMm: spot.xMm, yMm: spot.yMm, turn: 0 }]
        : [];
      return { ...problem, held };
    });
    expect(mean(shares)).toBeLessThan(0.1);
  });
});

describe("layers of equal pieces", () => {
  test("hold what is asked for, fit into the cloth, and are nearly as long together as the whole", () => {
    for (const seed of seeds(4, 600)) {
      const spots = planted(chance(seed), 3, 3, 2);
      const many = Array.from({ length: 10 }, () => spots).flat();
      const problem = problemOf(many);
      const grid = stepGridOf(problem);
      const steps = layerColumns(grid, 10 * WIDTH_MM);
      let step = steps.next();
      while (!step.done) step = steps.next();
      const { layers, types, rest } = step.value;
      const counts = rest.map((count) => count);
      for (const { length, columns } of layers) {
        expect(columns.reduce((sum, { width }) => sum + width, 0)).toBeLessThanOrEqual(10 * WIDTH_MM);
        for (const { width, types: stack } of columns) {
          expect(stack.reduce((sum, type) => sum + (types[type]?.h ?? 0), 0)).toBeLessThanOrEqual(length);
          for (const type of stack) {
            expect(types[type]?.w).toBeLessThanOrEqual(width);
            const row = types[type]?.row ?? -1;
            counts[row] = (counts[row] ?? 0) + 1;
          }
        }
      }
      const wanted = new Map<string, number>();
      for (const { w, h } of grid.items) wanted.set(`${w} ${h}`, (wanted.get(`${w} ${h}`) ?? 0) + 1);
      types.forEach(({ w, h, row }) => {
        expect(counts[row]).toBe(wanted.get(`${w} ${h}`));
      });
      expect(rest.reduce((a, b) => a + b, 0)).toBeLessThanOrEqual(12);
      const length = layers.reduce((sum, layer) => sum + layer.length, 0);
      const left = types.reduce((sum, { w, h, row }) => sum + w * h * (rest[row] ?? 0), 0);
      const whole = 10 * 10 * endOf(spots);
      expect(length + left / (10 * WIDTH_MM)).toBeLessThanOrEqual(1.02 * whole);
      const packing = layLayers(grid, 3, step.value);
      if (packing === undefined) throw new Error("not laid");
      const plan: ClothCutPlan = {
        status: "feasible",
        bolts: layOutBolts(problem, grid, packing),
        cost: packing.cost,
        bound: { cost: 0, which: "area" },
        gap: 0,
        evaluations: 0,
      };
      expect(verifyCloth(problem, plan)).toEqual([]);
      expect(packing.cost).toBeLessThanOrEqual(1.06 * 10 * endOf(spots));
    }
  });
});
