import fc from "fast-check";
import { expect, test } from "vitest";
import { spreadApart } from "./spread-apart.ts";

const places = fc
  .array(fc.double({ min: -100, max: 100, noNaN: true }), { minLength: 1, maxLength: 7 })
  .map((list) => [...list].sort((a, b) => a - b));

const cost = (from: readonly number[], to: readonly number[]) =>
  from.reduce((sum, place, i) => sum + ((to[i] ?? 0) - place) ** 2, 0);

test("neighbours keep the pitch and the order", () => {
  fc.assert(
    fc.property(places, (wanted) => {
      const moved = spreadApart(wanted, 5);
      expect(moved).toHaveLength(wanted.length);
      moved.slice(1).forEach((place, i) => {
        expect(place - (moved[i] ?? 0)).toBeGreaterThanOrEqual(5 - 1e-6);
      });
    }),
    { seed: 20260131 },
  );
});

test("places that are far enough apart stay", () => {
  expect(spreadApart([0, 6, 20], 5)).toEqual([0, 6, 20]);
});

test("no other way of keeping the pitch moves less (random feasible rivals)", () => {
  const rival = fc.array(fc.double({ min: 0, max: 12, noNaN: true }), { minLength: 7, maxLength: 7 });
  fc.assert(
    fc.property(places, fc.double({ min: -110, max: 110, noNaN: true }), rival, (wanted, start, extra) => {
      const other = wanted.map(
        (_, i) => start + 5 * i + extra.slice(0, i).reduce((sum, gap) => sum + gap, 0),
      );
      expect(cost(wanted, spreadApart(wanted, 5))).toBeLessThanOrEqual(cost(wanted, other) + 1e-6);
    }),
    { seed: 20260132 },
  );
});
