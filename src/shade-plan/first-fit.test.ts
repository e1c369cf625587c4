import { expect, test } from "vitest";
import { firstFit } from "./first-fit.ts";

// “Inverted pleat curtains” and its tutorial: two sides cut 38 cm, a centre of 83 and two inserts of 42.
test("the published pieces come out of two widths of 140 cm, beside each other in each", () => {
  const { places, drops } = firstFit([380, 420, 830, 420, 380], 1400);
  expect(drops).toBe(2);
  expect(places).toEqual([
    { drop: 1, xMm: 420 },
    { drop: 0, xMm: 830 },
    { drop: 0, xMm: 0 },
    { drop: 1, xMm: 0 },
    { drop: 1, xMm: 800 },
  ]);
});

test("a piece wider than the cloth has a width of its own, and none takes none", () => {
  expect(firstFit([1500, 100], 1400)).toEqual({
    places: [
      { drop: 0, xMm: 0 },
      { drop: 1, xMm: 0 },
    ],
    drops: 2,
  });
  expect(firstFit([], 1400)).toEqual({ places: [], drops: 0 });
});
