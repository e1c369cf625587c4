import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Strip, tileStrip } from "./tile-strip.ts";

function strip(lengthMm: number, at: readonly number[] = []): Strip {
  return {
    key: "A",
    name: "Rows",
    title: "Rows",
    use: "",
    lengthMm,
    marks: at.map((atMm) => ({ atMm, name: `at ${atMm}`, text: String(atMm) })),
  };
}

describe("a strip cut into pieces", () => {
  // Counted by hand: 1,524 mm in pieces of 210 mm is 7 whole pieces and 54 mm more.
  test("60 in on pieces of 210 mm", () => {
    const tiles = tileStrip(strip(1524), 210, 10);
    expect(tiles.map((tile) => tile.key)).toEqual(["A1", "A2", "A3", "A4", "A5", "A6", "A7", "A8"]);
    expect(tiles.map((tile) => tile.fromMm)).toEqual([0, 210, 420, 630, 840, 1050, 1260, 1470]);
    expect(tiles.at(-1)).toMatchObject({ toMm: 1524, printedFromMm: 1460, printedToMm: 1524 });
  });

  test("a rest no longer than the overlap is printed on the piece before it", () => {
    expect(tileStrip(strip(428), 210, 10)).toHaveLength(2);
    expect(tileStrip(strip(431), 210, 10)).toHaveLength(3);
  });

  test("what is shorter than a piece is one piece", () => {
    expect(tileStrip(strip(40), 210, 10)).toMatchObject([{ fromMm: 0, toMm: 40, printedToMm: 40 }]);
  });

  test("pieces follow each other without gap, each mark within one of them, those near a join on both", () => {
    const length = fc.double({ min: 1, max: 12_000, noNaN: true });
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(length, fc.array(share, { maxLength: 40 }), (lengthMm, shares) => {
        const at = shares.map((part) => part * lengthMm);
        const tiles = tileStrip(strip(lengthMm, at), 203.2, 10);
        expect(tiles[0]?.fromMm).toBe(0);
        expect(tiles.at(-1)?.toMm).toBe(lengthMm);
        tiles.slice(1).forEach((tile, i) => {
          expect(tile.fromMm).toBe(tiles[i]?.toMm);
          // Both sides of a join print the same 2 × overlap, as far as the strip goes.
          expect((tiles[i]?.printedToMm ?? 0) - tile.printedFromMm).toBeCloseTo(20, 6);
        });
        for (const atMm of at) {
          const printed = tiles.filter((tile) => tile.marks.some((mark) => mark.atMm === atMm));
          const near = tiles.slice(1).some((tile) => Math.abs(tile.fromMm - atMm) <= 9.999);
          expect(printed.length).toBeGreaterThanOrEqual(near ? 2 : 1);
        }
        for (const tile of tiles)
          expect(tile.printedToMm - tile.printedFromMm).toBeLessThanOrEqual(223.2 + 10.001);
      }),
    );
  });

  test("a piece without length is a fault", () => {
    expect(() => tileStrip(strip(100), 0, 10)).toThrow("invalid tileMm: 0");
  });
});
