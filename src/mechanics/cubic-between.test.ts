import fc from "fast-check";
import { test } from "vitest";
import { expectNear } from "../../test/near.ts";
import { cubicBetween } from "./cubic-between.ts";

const value = fc.double({ min: -1000, max: 1000, noNaN: true });
const spacing = fc.double({ min: 1, max: 100, noNaN: true });
const share = fc.double({ min: 0, max: 1, noNaN: true });
const four = fc.tuple(value, value, value, value);
const three = fc.tuple(spacing, spacing, spacing);

test("over even spacings it is the curve of Catmull & Rom (1974), by its matrix", () => {
  fc.assert(
    fc.property(four, share, ([p, q, r, s], t) => {
      const curve =
        (2 * q + (r - p) * t + (2 * p - 5 * q + 4 * r - s) * t ** 2 + (-p + 3 * q - 3 * r + s) * t ** 3) / 2;
      expectNear(cubicBetween([p, q, r, s], [7, 7, 7], t), curve, 1e-9 * 1000);
    }),
  );
});

test("of points on a parabola it gives the parabola, whatever the spacings", () => {
  fc.assert(
    fc.property(three, fc.tuple(value, value, value), share, ([a, b, c], [u, v, w], t) => {
      const parabola = (x: number) => u + v * (x / 100) + w * (x / 100) ** 2;
      const at: [number, number, number, number] = [parabola(-a), parabola(0), parabola(b), parabola(b + c)];
      expectNear(cubicBetween(at, [a, b, c], t), parabola(t * b), 1e-6);
    }),
  );
});

test("it meets both its points, and is the same read from the other end", () => {
  fc.assert(
    fc.property(four, three, share, ([p, q, r, s], [a, b, c], t) => {
      expectNear(cubicBetween([p, q, r, s], [a, b, c], 0), q, 1e-9);
      expectNear(cubicBetween([p, q, r, s], [a, b, c], 1), r, 1e-9);
      expectNear(
        cubicBetween([p, q, r, s], [a, b, c], t),
        cubicBetween([s, r, q, p], [c, b, a], 1 - t),
        1e-6,
      );
    }),
  );
});
