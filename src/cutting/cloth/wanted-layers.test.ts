import { describe, expect, test } from "vitest";
import type { LayerPattern, PieceType } from "./layer-prices.ts";
import { type LayerPlan, lackedBy, piecesByRow, takeLayers, withoutUnwanted } from "./wanted-layers.ts";

describe("layers and what is still wanted", () => {
  // Two ways to lay the first row, one each for two others.
  const types: PieceType[] = [
    { w: 4, h: 6, turned: false, row: 0 },
    { w: 6, h: 4, turned: true, row: 0 },
    { w: 3, h: 5, turned: false, row: 1 },
    { w: 2, h: 2, turned: false, row: 2 },
  ];
  const layerOf = (length: number, ...stacks: number[][]): LayerPattern => ({
    length,
    columns: stacks.map((stack) => ({ width: 6, types: stack })),
  });

  test("each piece counts for its row, whichever way it lies", () => {
    const layer = layerOf(8, [0, 3], [1, 3], [2], [3]);
    expect([...piecesByRow(types, layer)]).toEqual([
      [0, 2],
      [2, 3],
      [1, 1],
    ]);
    expect(lackedBy(types, [2, 1, 3], layer)).toEqual([]);
    expect(lackedBy(types, [1, 1, 2], layer)).toEqual([0, 2]);
    expect(lackedBy(types, [9, 0, 9], layer)).toEqual([1]);
  });

  test("a layer that holds too much is as long as what is left in it, without the pieces beyond", () => {
    const layer = layerOf(8, [0, 3], [1, 3], [2]);
    expect(withoutUnwanted(types, [2, 1, 2], layer)).toBe(layer);
    // One of the first row: that of the first column; the second keeps its small piece.
    expect(withoutUnwanted(types, [1, 1, 2], layer)).toEqual(layerOf(8, [0, 3], [3], [2]));
    expect(withoutUnwanted(types, [1, 1, 0], layer)).toEqual(layerOf(6, [0], [2]));
    expect(withoutUnwanted(types, [0, 0, 2], layer)).toEqual(layerOf(2, [3], [3]));
    expect(withoutUnwanted(types, [0, 0, 0], layer)).toEqual(layerOf(0));
  });

  describe("taken into the plan", () => {
    const [a, b, c] = [layerOf(6, [0]), layerOf(5, [2]), layerOf(2, [3])];
    const taken = (rest: number[], used: readonly (readonly [LayerPattern, number])[]) => {
      const plan: LayerPlan = { layers: [], types, rest };
      const isAny = takeLayers(
        plan,
        used.map(([layer, amount]) => ({ layer, amount })),
      );
      return [plan.layers.map((layer) => [a, b, c].indexOf(layer)), plan.rest, isAny];
    };

    test("are all whole ones, those cut most often first, as long as all in them is wanted", () => {
      expect(
        taken(
          [9, 9, 9],
          [
            [a, 1.9],
            [b, 2],
            [c, 0.99],
          ],
        ),
      ).toEqual([[1, 1, 0], [8, 7, 9], true]);
      // A hair below a whole number is that number.
      expect(taken([9, 9, 9], [[c, 2 - 1e-7]])).toEqual([[2, 2], [9, 9, 7], true]);
      expect(taken([9, 9, 9], [[c, 2 - 1e-5]])).toEqual([[2], [9, 9, 8], true]);
      expect(taken([9, 9, 1], [[c, 3]])).toEqual([[2], [9, 9, 0], true]);
    });

    test("are those of three quarters and more where none is whole, else the fullest that is wanted", () => {
      expect(
        taken(
          [9, 9, 9],
          [
            [a, 0.75],
            [b, 0.9],
            [c, 0.74],
          ],
        ),
      ).toEqual([[1, 0], [8, 8, 9], true]);
      expect(
        taken(
          [9, 9, 9],
          [
            [a, 0.5],
            [b, 0.6],
          ],
        ),
      ).toEqual([[1], [9, 8, 9], true]);
      expect(
        taken(
          [9, 0, 9],
          [
            [a, 0.5],
            [b, 0.9],
          ],
        ),
      ).toEqual([[0], [8, 0, 9], true]);
    });

    test("are none where nothing in them is wanted any more", () => {
      expect(taken([0, 9, 9], [[a, 3]])).toEqual([[], [0, 9, 9], false]);
      expect(taken([9, 9, 9], [])).toEqual([[], [9, 9, 9], false]);
    });
  });
});
