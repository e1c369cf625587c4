import { describe, expect, it } from "vitest";
import {
  arealMassText,
  clothLengthText,
  forceText,
  GRAVITY,
  inches,
  lengthText,
  massText,
  NM_PER_POUND_FORCE_INCH,
  rulerText,
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
    expect(GRAVITY).toBe(9.80665);
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
