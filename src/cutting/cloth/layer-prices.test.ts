import { describe, expect, test } from "vitest";
import { LayerPrices } from "./layer-prices.ts";

const WIDTH = 12;

describe("layers priced by the worth of their pieces", () => {
  // By hand, on 12 wide and 9 long: stacks of three 3-high and columns 4 wide; wanted 9, 6, 5, 2 and 0 times.
  test("hold no more columns of a stack than are wanted of its pieces", () => {
    const prices = new LayerPrices([{ w: 4, h: 3, turned: false, row: 0 }], WIDTH, 9);
    const columns = (wanted: number) => {
      prices.setWorths([1], [wanted]);
      return prices.best(9, 0)?.columns.map(({ types }) => types.length);
    };
    expect([9, 6, 5, 2, 0].map(columns)).toEqual([[3, 3, 3], [3, 3], [3], [3], undefined]);
    prices.setWorths([0], [9]);
    expect(prices.best(9, -1)).toBeUndefined();
  });

  test("of lengths finer than the table are left out where a stack is too high after all", () => {
    // Cells of 10: three of 335 count as 990 and are 1,005 long.
    const prices = new LayerPrices([{ w: 4, h: 335, turned: false, row: 0 }], WIDTH, 12_000);
    prices.setWorths([1], [99]);
    expect(prices.best(1004, 0)).toBeUndefined();
    expect(prices.best(1005, 0)?.columns).toHaveLength(3);
  });
});
