import fc from "fast-check";
import { expect, test } from "vitest";
import { packPieces } from "./pack-pieces.ts";

const ROOM = { columnHeight: 200, columns: 7, between: 10 };

test("no two pieces share paper, none leaves its column, and every one is there", () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 1, max: 200 }), { maxLength: 60 }), (heights) => {
      const pieces = heights.map((height, id) => ({ id, height }));
      const placed = packPieces(pieces, ({ height }) => height, ROOM);
      expect(placed.map(({ piece }) => piece.id).sort((a, b) => a - b)).toEqual(pieces.map(({ id }) => id));
      for (const one of placed) {
        expect(one.column).toBeLessThan(ROOM.columns);
        expect(one.up).toBeGreaterThanOrEqual(0);
        expect(one.up + one.piece.height).toBeLessThanOrEqual(ROOM.columnHeight);
        for (const other of placed) {
          if (other === one || other.sheet !== one.sheet || other.column !== one.column) continue;
          const apart =
            one.up < other.up ? other.up - one.up - one.piece.height : one.up - other.up - other.piece.height;
          expect(apart).toBeGreaterThanOrEqual(ROOM.between);
        }
      }
    }),
  );
});

/** Fewest columns of all ways to fill them, by trying every piece in every open column and in a new one. */
function fewestColumns(heights: readonly number[], taken: readonly number[] = []): number {
  const [height, ...rest] = heights;
  if (height === undefined) return taken.length;
  let fewest = fewestColumns(rest, [...taken, height]);
  for (const [i, used] of taken.entries()) {
    const next = used + ROOM.between + height;
    if (next <= ROOM.columnHeight) fewest = Math.min(fewest, fewestColumns(rest, taken.with(i, next)));
  }
  return fewest;
}

test("longest first comes within 11/9 of the fewest columns, and one (Dósa 2007), and of few to the fewest", () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 20, max: 200 }), { minLength: 1, maxLength: 7 }), (heights) => {
      const placed = packPieces(
        heights.map((height) => ({ height })),
        ({ height }) => height,
        ROOM,
      );
      const columns = new Set(placed.map(({ sheet, column }) => `${sheet} ${column}`)).size;
      const fewest = fewestColumns(heights);
      expect(columns).toBeLessThanOrEqual(Math.floor((11 / 9) * fewest + 6 / 9));
      // No more sheets than those columns need.
      const sheets = Math.max(...placed.map(({ sheet }) => sheet)) + 1;
      expect(sheets).toBe(Math.ceil(columns / ROOM.columns));
    }),
    { numRuns: 60 },
  );
});
