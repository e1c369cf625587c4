import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cutFromStock } from "./cut-from-stock.ts";

describe("what is at hand and what is bought", () => {
  it("uses the short remnant first, and tells what is left of each", () => {
    const filled = cutFromStock({ cutsMm: [500], inStockMm: [2000, 600], newMm: 2438.4, kerfMm: 3 });
    expect(filled).toMatchObject({
      bought: 0,
      fromStockMm: 500,
      stockPiecesUsed: 1,
      stockLeftMm: [2000, 97],
    });
  });

  it("leaves to buy what no length holds, and nothing is nothing", () => {
    const filled = cutFromStock({ cutsMm: [3000, 500], inStockMm: [0], newMm: 2438.4, kerfMm: 3 });
    expect(filled).toMatchObject({ bought: 1, leftMm: [3000], stockLeftMm: [0] });
    expect(cutFromStock({ cutsMm: [], inStockMm: [600], newMm: 2438.4, kerfMm: 3 })).toMatchObject({
      bought: 0,
      stockLeftMm: [600],
    });
  });

  // Any two bars of first-fit are together more than full (Johnson et al., SIAM J. Computing 3, 1974, from memory): fewer
  // than twice the total length over the length of one, and at least that; cuts over half a bar take one each.
  it("stays within the proven bound of first-fit", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 20 }), { minLength: 1, maxLength: 40 }), (cutsMm) => {
        const { bought, leftMm } = cutFromStock({ cutsMm, inStockMm: [], newMm: 20, kerfMm: 0 });
        expect(leftMm).toEqual([]);
        const total = cutsMm.reduce((sum, one) => sum + one, 0);
        const halves = cutsMm.filter((cutMm) => cutMm > 10).length;
        expect(bought).toBeGreaterThanOrEqual(Math.max(halves, Math.ceil(total / 20)));
        expect(bought).toBeLessThanOrEqual(Math.min(cutsMm.length, Math.ceil((2 * total) / 20)));
      }),
      { numRuns: 100 },
    );
  });

  it("keeps length: what is placed and what is left make up the cuts", () => {
    const sizes = fc.array(fc.integer({ min: 1, max: 900 }), { maxLength: 20 });
    fc.assert(
      fc.property(sizes, sizes, (cutsMm, inStockMm) => {
        const filled = cutFromStock({ cutsMm, inStockMm, newMm: undefined, kerfMm: 0 });
        const total = (list: readonly number[]) => list.reduce((sum, one) => sum + one, 0);
        expect(filled.fromStockMm + total(filled.leftMm)).toBe(total(cutsMm));
        expect(total(inStockMm) - total(filled.stockLeftMm)).toBe(filled.fromStockMm);
        expect(Math.min(0, ...filled.stockLeftMm)).toBe(0);
      }),
      { numRuns: 200 },
    );
  });
});
