import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { UnitChoice } from "../../units/index.ts";
import { readLength, readNumber, readText, writeLength, writeNumber } from "./read-write.ts";
import { count, fine, length, number, percent, perRun, run, span, text } from "./spec.ts";

const imperial: UnitChoice = { system: "imperial", ruler: "1/8 in" };
const metric: UnitChoice = { system: "metric", ruler: "1 mm" };

describe("lengths in inputs", () => {
  it("come back as they went in, on a mark or off it", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 4000 }), fc.constantFrom(imperial, metric), (marks, units) => {
        const mm = units === metric ? marks : (marks * 25.4) / 8;
        const again = readLength(writeLength(mm, length("x"), units), length("x"), units);
        expect(again.ok && again.value).toBeCloseTo(mm, 6);
      }),
    );
    expect(writeLength(35.3 * 25.4, length("x"), imperial)).toBe("35.3");
    expect(writeLength(898.5, length("x"), metric)).toBe("898.5");
  });

  // 35 3/8 in = 898.525 mm and 100 yd = 91.44 m: NIST SP 811 (2008), appendix B.8 (1 in = 25.4 mm exactly).
  it("are read in the maker's units, small parts in millimetres, runs in yards or metres", () => {
    expect(readLength("35 3/8", span("x"), imperial)).toEqual({ ok: true, value: 898.525 });
    expect(readLength("905", span("x"), metric)).toEqual({ ok: true, value: 905 });
    expect(readLength("1.4", fine("x"), imperial)).toEqual({ ok: true, value: 1.4 });
    expect(readLength("100", run("x", 1, 1e6), imperial)).toEqual({ ok: true, value: 91_440 });
    expect(readLength("2,5", run("x", 1, 1e6), metric)).toEqual({ ok: true, value: 2500 });
  });

  it("outside their limits are refused with the limit", () => {
    const short = readLength("1", span("x"), imperial);
    expect(short).toEqual({ ok: false, reason: expect.stringContaining("at least 2\u00a0in") });
    const wide = readLength("40 ft", span("x"), imperial);
    expect(wide).toEqual({ ok: false, reason: expect.stringContaining("at most 472") });
    expect(readLength("a yard or so", span("x"), imperial).ok).toBe(false);
  });
});

describe("numbers in inputs", () => {
  it("are shown for each yard to those who buy by the yard", () => {
    const price = perRun("Price", 1e7, "¤");
    expect(writeNumber(25, price, imperial)).toBe("22.86");
    const read = readNumber("22.86", price, imperial);
    expect(read.ok && read.value).toBeCloseTo(25, 9);
  });

  it("accept a decimal comma, and refuse signs, words and parts of a whole", () => {
    expect(readNumber("2,5", number("x", 0, 10), metric)).toEqual({ ok: true, value: 2.5 });
    expect(readNumber("3", percent("x"), metric)).toEqual({ ok: true, value: 0.03 });
    expect(readNumber("50", percent("x"), metric)).toEqual({ ok: true, value: 0.5 });
    for (const refused of ["-1", "1e3", "", "many", "0x10", "51"])
      expect(readNumber(refused, percent("x"), metric).ok, refused).toBe(false);
    expect(readNumber("2.5", count("x", 1, 9), metric)).toEqual({
      ok: false,
      reason: "2.5 is not whole; write 2 or 3",
    });
  });
});

describe("names in inputs", () => {
  it("lose control characters and nothing else", () => {
    expect(readText("Nook\u0000 <b>east</b>", text("x", 120))).toEqual({
      ok: true,
      value: "Nook  <b>east</b>",
    });
    expect(readText("a\nb", { ...text("x", 120), lines: true })).toEqual({ ok: true, value: "a\nb" });
    expect(readText(" ", { ...text("x", 120), required: true }).ok).toBe(false);
  });
});
