import fc from "fast-check";
import { expect, test } from "vitest";
import { addTriangle, emptyDepthMap } from "./depth-map.ts";

const at = fc.oneof(fc.integer({ min: 0, max: 30 }), fc.double({ min: 0, max: 30, noNaN: true }));
const corner = fc.tuple(at, at, fc.double({ min: -50, max: 50, noNaN: true }));

/** By the definition: every spot whose three shares of the triangle are none below 0. */
function byEverySpot(corners: readonly (readonly [number, number, number])[], columns: number, rows: number) {
  const [[ax, ay, an], [bx, by, bn], [cx, cy, cn]] = corners as [
    [number, number, number],
    [number, number, number],
    [number, number, number],
  ];
  const area = (bx - ax) * (cy - ay) - (cx - ax) * (by - ay);
  return Array.from({ length: columns * rows }, (_, spot) => {
    const [x, y] = [spot % columns, Math.floor(spot / columns)];
    const u = ((bx - x) * (cy - y) - (cx - x) * (by - y)) / area;
    const v = ((cx - x) * (ay - y) - (ax - x) * (cy - y)) / area;
    const w = 1 - u - v;
    return { least: Math.min(u, v, w), near: u * an + v * bn + w * cn };
  });
}

test("a triangle is on every spot that it covers and on no other, however thin and slanting", () => {
  fc.assert(
    fc.property(fc.tuple(corner, corner, corner), (corners) => {
      const frame = [0, 0, 0, 30, 30, 0];
      const points = Float64Array.from([...corners.flat(), ...frame]);
      const [[ax, ay], [bx, by], [cx, cy]] = corners;
      fc.pre(Math.abs((bx - ax) * (cy - ay) - (cx - ax) * (by - ay)) > 1e-3);
      const map = emptyDepthMap(points, 1);
      addTriangle(map, points, 0, 1, 2);
      byEverySpot(corners, map.columns, map.rows).forEach(({ least, near }, spot) => {
        if (Math.abs(least) < 1e-7) return;
        if (least < 0) expect(map.nearMm[spot]).toBe(Number.NEGATIVE_INFINITY);
        else expect(map.nearMm[spot]).toBeCloseTo(near, 5);
      });
    }),
    { numRuns: 500 },
  );
});
