import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Point } from "../model.ts";
import { withFewerPoints } from "./fewer-points.ts";
import { arc } from "./kit.ts";

/** Distance of a point from the nearest stretch of a line, by trying places along each stretch. */
function distanceByTrying([x, y]: Point, line: readonly Point[]): number {
  let least = Number.POSITIVE_INFINITY;
  for (const [i, [ax, ay]] of line.entries()) {
    const [bx, by] = line[i + 1] ?? [ax, ay];
    for (let n = 0; n <= 200; n += 1)
      least = Math.min(least, Math.hypot(x - ax - ((bx - ax) * n) / 200, y - ay - ((by - ay) * n) / 200));
  }
  return least;
}

const place = fc.integer({ min: -40, max: 40 }).map((n) => n / 8);
const line = fc.array(fc.tuple(place, place) as fc.Arbitrary<Point>, { minLength: 1, maxLength: 14 });

describe("a line with fewer points", () => {
  test("no point that was drawn lies further from it than is allowed, and its ends stay", () => {
    fc.assert(
      fc.property(line, fc.constantFrom(0.1, 0.5, 2), (points, most) => {
        const kept = withFewerPoints(points, most);
        expect(kept[0]).toEqual(points[0]);
        expect(kept.at(-1)).toEqual(points.at(-1));
        // A stretch of 15 is tried every 0.075.
        for (const point of points) expect(distanceByTrying(point, kept)).toBeLessThanOrEqual(most + 0.04);
      }),
      { numRuns: 200 },
    );
  });

  test("a straight line keeps its ends, a corner its corner", () => {
    expect(
      withFewerPoints(
        [
          [0, 0],
          [1, 0],
          [2, 0],
          [5, 0],
        ],
        0.04,
      ),
    ).toEqual([
      [0, 0],
      [5, 0],
    ]);
    expect(
      withFewerPoints(
        [
          [0, 0],
          [1, 0],
          [2, 0],
          [2, 1],
          [2, 2],
        ],
        0.04,
      ),
    ).toEqual([
      [0, 0],
      [2, 0],
      [2, 2],
    ]);
  });

  test("a line that comes back the way it went keeps its turn", () => {
    expect(
      withFewerPoints(
        [
          [0, 0],
          [4, 0],
          [1, 0],
        ],
        0.04,
      ),
    ).toEqual([
      [0, 0],
      [4, 0],
      [1, 0],
    ]);
  });

  test("a circle has as many points as its sagitta asks for", () => {
    // Sagitta of a chord over an angle 2a: r(1 - cos a). At r = 10 and 0.04 that is a half angle of 5.1 degrees,
    // 35 chords; halving keeps up to twice as many.
    const kept = withFewerPoints(arc([0, 0], 10, 0, 360, 720), 0.04).length - 1;
    expect(kept).toBeGreaterThanOrEqual(35);
    expect(kept).toBeLessThanOrEqual(70);
  });
});
