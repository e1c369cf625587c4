import fc from "fast-check";
import { expect, test } from "vitest";
import { tileSheet } from "./tile-sheet.ts";

const page = { widthMm: 170, heightMm: 230 };

test("by hand: 400 × 100 mm on pages of 170 mm with 10 mm of overlap are three pages side by side", () => {
  const { columns, rows, tiles } = tileSheet({ widthMm: 400, heightMm: 100 }, page, 10, () => true);
  expect([columns, rows]).toEqual([3, 1]);
  expect(tiles.map(({ key, fromXMm, toXMm }) => [key, fromXMm, toXMm])).toEqual([
    ["A1", 0, 170],
    ["A2", 160, 330],
    ["A3", 320, 400],
  ]);
});

test("pages cover all of it, overlap by what was asked, and none is empty", () => {
  const size = fc.double({ min: 5, max: 1500, noNaN: true });
  fc.assert(
    fc.property(size, size, (widthMm, heightMm) => {
      const { columns, rows, tiles } = tileSheet({ widthMm, heightMm }, page, 10, () => true);
      expect(tiles).toHaveLength(columns * rows);
      for (const { column, row, fromXMm, toXMm, fromYMm, toYMm } of tiles) {
        expect(toXMm - fromXMm).toBeGreaterThan(0);
        expect(toYMm - fromYMm).toBeGreaterThan(0);
        if (column === columns - 1) expect(toXMm).toBeCloseTo(widthMm, 6);
        else expect(toXMm - (column + 1) * 160).toBeCloseTo(10, 6);
        if (row === rows - 1) expect(toYMm).toBeCloseTo(heightMm, 6);
      }
    }),
  );
});

test("what nothing is drawn on is not printed", () => {
  const { tiles } = tileSheet({ widthMm: 400, heightMm: 100 }, page, 10, ({ column }) => column !== 1);
  expect(tiles.map(({ key }) => key)).toEqual(["A1", "A3"]);
});
