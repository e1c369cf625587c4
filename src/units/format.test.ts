import { describe, expect, it } from "vitest";
import {
  arealMassText,
  clothLengthText,
  cordLengthText,
  forceText,
  GRAVITY,
  inches,
  lengthText,
  massLimitText,
  massText,
  massTextsApart,
  NM_PER_POUND_FORCE_INCH,
  rulerText,
  soldLengthText,
  torqueText,
} from "./index.ts";

const imperial = { system: "imperial", ruler: "1/16 in" } as const;
const metric = { system: "metric", ruler: "1 mm" } as const;
const plain = (text: string) => text.replaceAll("\u00a0", " ");

describe("ruler marks", () => {
  it("prints reduced fractions", () => {
    expect(plain(rulerText(inches(35.375), "1/16 in"))).toBe("35 3⁄8");
    expect(plain(rulerText(inches(35.375), "1/8 in"))).toBe("35 3⁄8");
    expect(plain(rulerText(inches(0.0625), "1/16 in"))).toBe("1⁄16");
    expect(plain(rulerText(inches(12), "1/16 in"))).toBe("12");
    expect(rulerText(904.6, "1 mm")).toBe("905");
    expect(plain(rulerText(-inches(0.5), "1/8 in"))).toBe("−1⁄2");
  });
  it("carries the unit", () => {
    expect(plain(lengthText(905, metric))).toBe("905 mm");
    expect(plain(lengthText(914.4, imperial))).toBe("36 in");
  });
});

describe("units against NIST SP 811 (2008), appendix B.8", () => {
  it("yard, pound, ounce per square yard, pound-force", () => {
    expect(plain(clothLengthText(914.4, imperial))).toBe("1 yd");
    expect(plain(massText(0.45359237, imperial))).toBe("1 lb");
    expect(plain(arealMassText(33.90575, imperial))).toBe("1 oz/yd²");
    expect(plain(forceText(4.448222, imperial))).toBe("1 lbf (4.4 N)");
    expect(plain(forceText(0.19, imperial))).toBe("0.04 lbf (0.2 N)");
    expect(plain(forceText(0, imperial))).toBe("0 lbf (0 N)");
    expect(GRAVITY).toBe(9.80665);
  });
  // 1 lb = 0.453 592 37 kg: 6.8 kg = 14.991 lb, 4.5 kg = 9.921 lb, 13.6 kg = 29.983 lb.
  it.each([
    [6.8, "most", "14.9 lb", "6.8 kg"],
    [4.5, "most", "9.9 lb", "4.5 kg"],
    [13.6, "most", "29.9 lb", "13.6 kg"],
    [15 * 0.45359237, "most", "15 lb", "6.8 kg"],
    [10, "most", "22 lb", "10 kg"],
    [4.5, "least", "10 lb", "4.5 kg"],
    [0.455, "most", "1 lb", "455 g"],
    [0.455, "least", "1.1 lb", "455 g"],
    [15 * 0.45359237, "least", "15 lb", "6.81 kg"],
  ] as const)(
    "a limit of %d kg at the %s is spoken as %s or %s, never as wider than it is",
    (kg, side, pounds, kilograms) => {
      expect(plain(massLimitText(kg, imperial, side))).toBe(pounds);
      expect(plain(massLimitText(kg, metric, side))).toBe(kilograms);
    },
  );
  it("a mass over a limit is told more finely where both would read alike", () => {
    expect(massTextsApart(2.2, 2.2003, metric, "most").map(plain)).toEqual(["2.2 kg", "2.2003 kg"]);
    expect(massTextsApart(2.2, 2.2003, imperial, "most").map(plain)).toEqual(["4.8 lb", "4.85 lb"]);
    expect(massTextsApart(1, 0.9999, metric, "least").map(plain)).toEqual(["1 kg", "999.9 g"]);
  });
  it("pound-force inch: 1.129 848 E-01 N·m", () => {
    expect(NM_PER_POUND_FORCE_INCH).toBeCloseTo(0.1129848, 7);
    expect(plain(torqueText(0.1129848, imperial))).toBe("1 lbf·in (0.11 N·m)");
    expect(plain(torqueText(0.356, metric))).toBe("0.36 N·m");
  });
});

describe("units as they are spoken", () => {
  const plain = (text: string) => text.replaceAll("\u00a0", " ");
  const imperial = { system: "imperial", ruler: "1/8 in" } as const;
  const metric = { system: "metric", ruler: "1 mm" } as const;

  // The counter cuts eighths of a yard, 4 1/2 in each, and never less than is needed.
  it.each([
    [0, "0 yd"],
    [914.4, "1 yd"],
    [1663.7, "1 7⁄8 yd"],
    [114.3, "1⁄8 yd"],
    [114.4, "1⁄4 yd"],
    [2286, "2 1⁄2 yd"],
    [-50, "−1⁄8 yd"],
  ])("%d mm of cloth is %s", (lengthMm, text) => {
    expect(plain(clothLengthText(lengthMm, imperial))).toBe(text);
  });

  it.each([
    [0, "0 in", "0 mm"],
    [0.25, "0.01 in", "0.25 mm"],
    [1.2, "0.047 in", "1 mm"],
    [1.6, "1⁄8 in", "2 mm"],
    [-0.3, "−0.012 in", "−0.3 mm"],
  ])("%d mm is never told as nought where it is something", (lengthMm, inchesText, mmText) => {
    expect(plain(lengthText(lengthMm, imperial))).toBe(inchesText);
    expect(plain(lengthText(lengthMm, metric))).toBe(mmText);
  });
});

// NIST SP 811 (2008), appendix B.8: 1 ft = 304.8 mm, 1 in = 25.4 mm.
describe("what is bought by the length", () => {
  it.each([
    [6522.7, "21 ft 5 in", "256 13⁄16 in"],
    [6705.6, "22 ft", "22 ft"],
    [2438.4, "8 ft", "8 ft"],
    [2400, "7 ft 11 in", "94 1⁄2 in"],
    [2000, "6 ft 7 in", "78 3⁄4 in"],
    [100, "4 in", "3 15⁄16 in"],
    [0, "0 ft", "0 ft"],
  ])(
    "%f mm: cord in feet and whole inches, never less; a bar in whole feet or by the ruler",
    (mm, cord, bar) => {
      expect(plain(cordLengthText(mm, imperial))).toBe(cord);
      expect(plain(soldLengthText(mm, imperial))).toBe(bar);
    },
  );
  it("in metres to the centimetre", () => {
    expect(plain(cordLengthText(6522.7, metric))).toBe("6.52 m");
    expect(plain(soldLengthText(2400, metric))).toBe("2.4 m");
  });
});
