import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { inches } from "../../units/index.ts";
import { columnCount } from "./columns.ts";

describe("column count", () => {
  it("derived run X1 (geometry check): 36 in, inset 2, spacing at most 10 gives 5", () => {
    expect(columnCount(inches(36), inches(2), inches(10))).toBe(5);
  });
  it("corrects the published FAQ: at 62 in with inset 1 and 10 in bays 7 columns, not 6 (12 in bays)", () => {
    expect(columnCount(inches(62), inches(1), inches(10))).toBe(7);
  });
  it("is the fewest that keeps every bay within the largest spacing", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 60, max: 12_000, noNaN: true }),
        fc.double({ min: 30, max: 1000, noNaN: true }),
        (widthMm, largestMm) => {
          const inset = widthMm / 5;
          const n = columnCount(widthMm, inset, largestMm);
          const bay = (count: number) => (widthMm - 2 * inset) / (count - 1);
          return bay(n) <= largestMm + 1e-6 && (n === 2 || bay(n - 1) > largestMm);
        },
      ),
    );
  });
});
