import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { downToMark, markMm, RULERS, toMark, upToMark } from "./index.ts";

const ruler = fc.constantFrom(...RULERS);
const length = fc.double({ min: 0, max: 20_000, noNaN: true });

describe("rounding at the ruler", () => {
  it("never moves a position by more than half a mark", () => {
    fc.assert(fc.property(ruler, length, (r, mm) => Math.abs(toMark(mm, r) - mm) <= markMm(r) / 2 + 1e-9));
  });
  it("goes down and up by less than a mark", () => {
    fc.assert(
      fc.property(ruler, length, (r, mm) => {
        const down = mm - downToMark(mm, r);
        const up = upToMark(mm, r) - mm;
        return down > -1e-4 && down < markMm(r) && up > -1e-4 && up < markMm(r);
      }),
    );
  });
  it("leaves marks where they are", () => {
    expect(upToMark(toMark(898.525, "1/16 in"), "1/16 in")).toBeCloseTo(898.525, 9);
    expect(downToMark(toMark(898.525, "1/16 in"), "1/16 in")).toBeCloseTo(898.525, 9);
  });
  it("takes a tie upwards, whichever way the sum came to it", () => {
    // (35 1/4 − 2·2) / 4 in = 7 13/16 in: half way between two eighths.
    expect(toMark(((35.25 - 4) / 4) * 25.4, "1/8 in")).toBeCloseTo(7.875 * 25.4, 9);
    expect(toMark((35.25 * 25.4 - 2 * 2 * 25.4) / 4, "1/8 in")).toBeCloseTo(7.875 * 25.4, 9);
    expect(toMark(63.5 - 1e-14, "1 mm")).toBe(64);
  });
});
