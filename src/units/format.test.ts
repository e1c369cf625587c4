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
