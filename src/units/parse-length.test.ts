import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { lengthInputText, lengthText, parseLength, RULERS, toMark, type UnitChoice } from "./index.ts";

/** 1 in = 25.4 mm exactly, 1 ft = 304.8 mm, 1 yd = 914.4 mm: NIST SP 811 (2008), appendix B.8. */
const WRITTEN: [text: string, bare: "in" | "mm" | "cm", lengthMm: number][] = [
  ["35 3/8", "in", 898.525],
  ["35-3/8", "in", 898.525],
  ["35 - 3/8", "in", 898.525],
  ['35.375"', "mm", 898.525],
  ["35⅜″", "mm", 898.525],
  ["35 3⁄8 in", "mm", 898.525],
  [`2' 11 3/8"`, "mm", 898.525],
  ["2 ft 11 3/8 in", "mm", 898.525],
  ["2′ 11⅜″", "mm", 898.525],
  ["2' 11 3/8", "mm", 898.525],
  ["3/4", "in", 19.05],
  ["90,5 cm", "in", 905],
  ["90.5", "cm", 905],
  ["905 mm", "in", 905],
  ["905", "mm", 905],
  ["1 m 5 cm", "in", 1050],
  ["1.2 m", "in", 1200],
  ["1 yd 6 in", "mm", 1066.8],
  [",5 in", "mm", 12.7],
  ["36 inches", "mm", 914.4],
  ["  7 1/2  ", "in", 190.5],
  ["34 and a half", "in", 876.3],
  ["35 and three eighths inches", "mm", 898.525],
  ["35 and 3/8", "in", 898.525],
  ["three-quarters of an inch", "mm", 19.05],
  ["2 feet and 11 3/8 inches", "mm", 898.525],
  ["7 and one quarter", "in", 184.15],
  ["half an inch", "mm", 12.7],
  ["3 quarters of an inch", "mm", 19.05],
  ["15 and fifteen sixteenths", "in", 404.8125],
];

const REFUSED = [
  "",
  "abc",
  "-5",
  "3/0",
  "35 3/8 kg",
  "1,234,567",
  "5 mm 3 in",
  "3 3 3",
  "12 1/2 1/4",
  "and",
  "34 and",
  "a half and a quarter",
  "34 quarter",
  "34 half",
  "1e999",
  "∞",
];

describe("lengths as makers write them", () => {
  it.each(WRITTEN)("%s read with bare %s", (text, bare, lengthMm) => {
    const read = parseLength(text, bare);
    expect(read).toMatchObject({ ok: true });
    if (read.ok) expect(Math.abs(read.lengthMm - lengthMm)).toBeLessThan(1e-9);
  });

  it.each(REFUSED)("refuses “%s” and says what would do", (text) => {
    const read = parseLength(text, "in");
    expect(read.ok).toBe(false);
    if (!read.ok) expect(read.reason).toContain("35 3/8");
  });

  it("refuses rather than hangs on long junk", () => {
    expect(parseLength("1 ".repeat(50_000), "in").ok).toBe(false);
  });

  it("reads any text without throwing", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), (text) => {
        const read = parseLength(text, "in");
        return read.ok ? Number.isFinite(read.lengthMm) && read.lengthMm >= 0 : read.reason.length > 0;
      }),
    );
  });
});

describe("format and parse", () => {
  it("are each other’s inverse on every mark of every ruler", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...RULERS),
        fc.double({ min: 0, max: 20_000, noNaN: true }),
        (ruler, lengthMm) => {
          const units: UnitChoice = { system: ruler === "1 mm" ? "metric" : "imperial", ruler };
          const bare = ruler === "1 mm" ? "mm" : "in";
          const mark = toMark(lengthMm, ruler);
          for (const text of [lengthInputText(lengthMm, units), lengthText(mark, units)]) {
            const read = parseLength(text, bare);
            if (!read.ok || Math.abs(read.lengthMm - mark) > 1e-6) return false;
          }
          return true;
        },
      ),
    );
  });
});
