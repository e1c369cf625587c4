import fc from "fast-check";
import { expect, test } from "vitest";
import { MOST_RINGS, ringMarks, ringWords } from "./ring-marks.ts";

const lines = (count: number) => Array.from({ length: count }, (_, i) => ({ number: i + 1, mm: 10 * i }));

test("every crossing has a ring, as long as so many can be told apart", () => {
  expect(ringMarks(lines(41), lines(60))).toHaveLength(41 * 60);
  expect(ringWords(lines(41), lines(60))).toBe("");
});

test("a huge grid is drawn with few rings, the outermost among them, and says so", () => {
  const counts = fc.tuple(fc.integer({ min: 1, max: 200 }), fc.integer({ min: 2, max: 60 }));
  fc.assert(
    fc.property(counts, ([rows, columns]) => {
      fc.pre(rows * columns > MOST_RINGS);
      const drawn = ringMarks(lines(rows), lines(columns));
      expect(drawn.length).toBeLessThanOrEqual(MOST_RINGS);
      expect(drawn.length).toBeGreaterThan(MOST_RINGS / 4);
      const places = drawn.map(({ at }) => at.join());
      for (const x of [0, 10 * (columns - 1)])
        for (const y of [0, 10 * (rows - 1)]) expect(places).toContain([x, y].join());
      expect(ringWords(lines(rows), lines(columns))).toMatch(/^ .+\.$/);
    }),
    { numRuns: 60 },
  );
});
