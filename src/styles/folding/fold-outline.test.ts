import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { ShadePoint } from "../../shade-plan/index.ts";
import { foldOutline } from "./fold-outline.ts";

const walked = (points: readonly ShadePoint[]) =>
  points.slice(1).reduce((sum, [x, y], i) => {
    const [beforeX, beforeY] = points[i] ?? [0, 0];
    return sum + Math.hypot(x - beforeX, y - beforeY);
  }, 0);

const cases = fc.record({
  arc: fc.double({ min: 60, max: 320, noNaN: true }),
  share: fc.double({ min: 0, max: 1, noNaN: true }),
  outer: fc.double({ min: 4, max: 55, noNaN: true }),
  inner: fc.double({ min: 0, max: 1, noNaN: true }),
});

describe("one fold between two rings", () => {
  test("the drawn line is as long as the cloth and ends at both rings", () => {
    fc.assert(
      fc.property(cases, ({ arc, share, outer, inner }) => {
        const points = foldOutline(arc, arc * share, { outerMm: outer, innerMm: outer * inner });
        expect(Math.abs(walked(points) - arc)).toBeLessThan(1e-3);
        expect(points[0]).toEqual([0, 0]);
        expect(points.at(-1)?.[0]).toBeCloseTo(0, 9);
        expect(points.at(-1)?.[1]).toBeCloseTo(arc * share, 9);
      }),
      { seed: 20260133 },
    );
  });

  test("it hangs outwards only, and no further than its reach", () => {
    fc.assert(
      fc.property(cases, ({ arc, share, outer, inner }) => {
        for (const [out] of foldOutline(arc, arc * share, { outerMm: outer, innerMm: outer * inner })) {
          expect(out).toBeGreaterThanOrEqual(-1e-9);
          expect(out).toBeLessThanOrEqual(outer * 1.07 + 1e-9);
        }
      }),
      { seed: 20260134 },
    );
  });

  /**
   * Flexible limit: a chain of arc S between pins d apart on one vertical line hangs (S − d)/2 below the lower
   * pin. The outline comes near it as the reach goes to nothing (a thin catenary; Routh, Irvine 1981, from memory).
   */
  test.each([
    [200, 100],
    [200, 40],
    [200, 0],
  ])("arc %d over a gap of %d: with little reach it droops half its slack", (arc, gap) => {
    const points = foldOutline(arc, gap, { outerMm: 0.5, innerMm: 0.3 });
    const lowest = Math.max(...points.map(([, down]) => down));
    expect(Math.abs(lowest - gap - (arc - gap) / 2)).toBeLessThan(0.02 * arc);
  });

  test("gathered folds lie inside each other: the next one in never crosses the one outside", () => {
    const outside = foldOutline(190, 0, { outerMm: 24, innerMm: 18.8 });
    const inside = foldOutline(190, 0, { outerMm: 16, innerMm: 10.8 });
    expect(crossings(outside.slice(1, -1), inside.slice(1, -1))).toBe(0);
  });
});

function crossings(a: readonly ShadePoint[], b: readonly ShadePoint[]): number {
  const side = (p: ShadePoint, q: ShadePoint, r: ShadePoint) =>
    (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]);
  let count = 0;
  for (let i = 1; i < a.length; i += 1)
    for (let j = 1; j < b.length; j += 1) {
      const [p, q, r, s] = [a[i - 1], a[i], b[j - 1], b[j]];
      if (!p || !q || !r || !s) continue;
      if (side(p, q, r) * side(p, q, s) < 0 && side(r, s, p) * side(r, s, q) < 0) count += 1;
    }
  return count;
}
