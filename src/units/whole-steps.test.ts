import fc from "fast-check";
import { expect, test } from "vitest";
import { remainderMm } from "./whole-steps.ts";

test("what is left lies within one step, and the rest is whole steps (division with remainder)", () => {
  const length = fc.double({ min: -5000, max: 5000, noNaN: true });
  const step = fc.double({ min: 1, max: 900, noNaN: true });
  fc.assert(
    fc.property(length, step, (lengthMm, stepMm) => {
      const left = remainderMm(lengthMm, stepMm);
      expect(left).toBeGreaterThanOrEqual(0);
      expect(left).toBeLessThan(stepMm);
      const steps = (lengthMm - left) / stepMm;
      expect(Math.abs(steps - Math.round(steps)) * stepMm).toBeLessThan(2e-6);
    }),
  );
});

test("a sum that misses a whole step by its last bits leaves nothing", () => {
  // 0.1 + 0.2 is not 0.3 in binary; neither side of it is a remainder.
  expect(remainderMm(0.1 + 0.2, 0.3)).toBe(0);
  expect(remainderMm(0.3 * 3 - Number.EPSILON, 0.3)).toBe(0);
});
