import { describe, expect, test } from "vitest";
import { givenCloth } from "../../../../test/cutting/given-cloth.ts";
import { type GridBolt, type GridItem, type Lattice, type StepGrid, stepGridOf } from "../grid.ts";
import { Layers } from "./layers.ts";

const WIDTH = 12;

/** Pieces that may be turned, on an endless bolt, all in steps. */
function gridOf(sizes: readonly (readonly [number, number])[]): StepGrid {
  const grid = stepGridOf(givenCloth(sizes.map((size) => ({ size, grain: "free", nap: "either" }))));
  const items = grid.items.map((item, n) => ({ ...item, w: sizes[n]?.[0] ?? 0, h: sizes[n]?.[1] ?? 0 }));
  return { ...grid, items, bolts: grid.bolts.map((bolt) => ({ ...bolt, w: WIDTH })) };
}
const boltOf = (grid: StepGrid) => grid.bolts[0] as GridBolt;
const useful = () => true;

describe("the layers of a few pieces", () => {
  test("of two pieces that are alike begin with the first; of two that differ in anything, with either", () => {
    const print = { along: 4, across: 4, half: false };
    const begunWith = (change: Partial<GridItem>, lattice?: Lattice) => {
      const grid = gridOf([
        [5, 3],
        [5, 3],
      ]);
      const phase = lattice ? { turns: false, phaseX: 0, phaseY: 0 } : {};
      const items = grid.items.map((item, n) => ({ ...item, ...phase, ...(n === 1 ? change : {}) }));
      const found = new Set<number>();
      const emit = (taken: number) => found.add(taken);
      const layers = new Layers({ ...grid, items, ...(lattice ? { lattice } : {}) }, 3);
      expect(layers.each({ rest: 3, y: 0, bolt: boltOf(grid), first: false, useful, emit })).toBe(true);
      return [...found].filter((set) => set < 3).sort();
    };
    for (const lattice of [undefined, print]) {
      expect(begunWith({}, lattice)).toEqual([1]);
      expect(begunWith({ w: 4 }, lattice)).toEqual([1, 2]);
      expect(begunWith({ h: 4 }, lattice)).toEqual([1, 2]);
      expect(begunWith({ lotGroup: 0 }, lattice)).toEqual([1, 2]);
    }
    expect(begunWith({ turns: false })).toEqual([1, 2]);
    expect(begunWith({ phaseX: 1 }, print)).toEqual([1, 2]);
    expect(begunWith({ phaseY: 1 }, print)).toEqual([1, 2]);
  });

  test("are not laid on where the same pieces have left more room before", () => {
    /** Pieces laid in all columns and stacks that come in order; each way is kept, or none is looked at again. */
    const laidIn = (items: readonly GridItem[], isKept: boolean): number => {
      const ways: { taken: number; reach: number[] }[] = [];
      let laid = 0;
      const columns = (x: number, taken: number, end: number, from: number): void => {
        for (let k = from; k < items.length; k++)
          if (!(taken & (1 << k))) pile({ x, right: x, y: 0, first: k }, k, taken, end);
      };
      const pile = (
        column: { x: number; right: number; y: number; first: number },
        k: number,
        taken: number,
        end: number,
      ): void => {
        const { w = 0, h = 0 } = items[k] ?? {};
        for (const [wide, high] of [
          [w, h],
          [h, w],
        ] as const) {
          const right = Math.max(column.right, column.x + wide);
          if (right > WIDTH) continue;
          laid++;
          const now = taken | (1 << k);
          const below = column.y + high;
          const far = Math.max(end, below);
          const reach = [column.x, right, below, far, column.first, k];
          const isKnown = ways.some(
            (one) => one.taken === now && one.reach.every((side, n) => side <= (reach[n] ?? 0)),
          );
          if (isKept && isKnown) continue;
          ways.push({ taken: now, reach });
          columns(right, now, far, column.first + 1);
          for (let next = k + 1; next < items.length; next++)
            if (!(now & (1 << next))) pile({ ...column, right, y: below }, next, now, far);
        }
      };
      columns(0, 0, 0, 0);
      return laid;
    };
    const sizes = [3, 4, 2, 1].map((w, n) => [w, w + 1 + (n % 3)] as const);
    const grid = gridOf(sizes);
    const layers = new Layers(grid, 3);
    layers.each({ rest: 15, y: 0, bolt: boltOf(grid), first: false, useful, emit: () => {} });
    expect(layers.nodes).toBe(laidIn(grid.items, true));
    expect(layers.nodes).toBeLessThan(0.9 * laidIn(grid.items, false));
  });
});
