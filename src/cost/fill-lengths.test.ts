import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fillLengths } from "./fill-lengths.ts";

describe("cutting stock lengths", () => {
  it("three of 800 come out of one 2,438.4 mm board with two saw lines between, four do not", () => {
    expect(fillLengths([800, 800, 800], [], 2438.4, 3).bought).toBe(1);
    expect(fillLengths([800, 800, 800, 800], [], 2438.4, 3).bought).toBe(2);
  });

  it("a saw line does not follow the last cut: two of 1,000 and one line need 2,003", () => {
    expect(fillLengths([1000, 1000], [], 2003, 3).bought).toBe(1);
    expect(fillLengths([1000, 1000], [], 2002.9, 3).bought).toBe(2);
  });

  // Garey & Johnson, Computers and Intractability: first-fit decreasing stays within 11/9 OPT + 4 (Johnson 1973,
  // recalled from memory); OPT is at least the total length over the stock length.
  it("stays within the proven bound of first-fit decreasing, and within the cuts' own number", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 20 }), { minLength: 1, maxLength: 12 }), (cuts) => {
        const { bought, leftMm } = fillLengths(cuts, [], 20, 0);
        expect(leftMm).toEqual([]);
        const best = fewestByTrial(cuts, 20);
        expect(bought).toBeGreaterThanOrEqual(best);
        expect(bought).toBeLessThanOrEqual(Math.floor((11 / 9) * best + 4));
      }),
      { seed: 21, numRuns: 60 },
    );
  });

  it("uses the short remnant first, and tells what is left of each", () => {
    const filled = fillLengths([500], [2000, 600], 2438.4, 3);
    expect(filled).toMatchObject({ bought: 0, fromRackMm: 500, rackPiecesUsed: 1, rackLeftMm: [2000, 97] });
  });

  it("keeps length: what is placed and what is left make up the cuts", () => {
    const sizes = fc.array(fc.integer({ min: 1, max: 900 }), { maxLength: 20 });
    fc.assert(
      fc.property(sizes, sizes, (cuts, rack) => {
        const filled = fillLengths(cuts, rack, undefined, 0);
        const total = (list: readonly number[]) => list.reduce((sum, one) => sum + one, 0);
        expect(filled.fromRackMm + total(filled.leftMm)).toBe(total(cuts));
        expect(total(rack) - total(filled.rackLeftMm)).toBe(filled.fromRackMm);
        expect(Math.min(0, ...filled.rackLeftMm)).toBe(0);
      }),
      { seed: 22, numRuns: 200 },
    );
  });
});

/** The fewest lengths by trying every placing: small cases only. */
function fewestByTrial(cuts: number[], stock: number): number {
  const order = [...cuts].sort((a, b) => b - a);
  let best = order.length;
  const place = (index: number, rooms: number[]) => {
    if (rooms.length >= best) return;
    const cut = order[index];
    if (cut === undefined) {
      best = rooms.length;
      return;
    }
    const tried = new Set<number>();
    rooms.forEach((room, i) => {
      if (room < cut || tried.has(room)) return;
      tried.add(room);
      place(
        index + 1,
        rooms.map((one, j) => (j === i ? one - cut : one)),
      );
    });
    place(index + 1, [...rooms, stock - cut]);
  };
  place(0, []);
  return best;
}
