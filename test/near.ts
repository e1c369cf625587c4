import { expect } from "vitest";

/** Compares with a tolerance in the number's own unit: `toBeCloseTo` counts digits and hides errors. */
export function expectNear(value: number, expected: number, tolerance: number, what = "value"): void {
  expect(
    Math.abs(value - expected) <= tolerance,
    `${what}: ${value} is not within ${tolerance} of ${expected}`,
  ).toBe(true);
}
