import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { expectNear } from "../../../test/near.ts";
import { centimetres, inches } from "../../units/index.ts";
import { headrailAllowanceMm } from "../base/headrail.ts";
import { layEvenFolds } from "./even-folds.ts";
import { type FoldAsk, layFolds } from "./folds.ts";

const open: Omit<FoldAsk, "lengthMm" | "headrailMm"> = {
  skirtMm: 0,
  gradeStepMm: 0,
  largestFoldMm: 2000,
  smallestFoldMm: 50,
};

describe("half-fold rule", () => {
  it("soft-furnishing FAQ, “Calculating pockets spacing”: L 99 cm, T 7 cm, 7 half folds", () => {
    const folds = layFolds({ ...open, lengthMm: centimetres(99), headrailMm: centimetres(7), rows: 3 });
    // Published: (99 − 7) / 7 = 13.1 cm, 3 rods, raised 20 cm.
    expectNear(folds.bottomSectionMm, centimetres(13.1), 0.5, "half fold");
    expectNear(folds.raisedHeightMm, centimetres(20), 2, "raised");
    expect(folds.foldsMm).toHaveLength(3);
  });

  it("derived run X1 (geometry check, not published): L 60 in, T 3 in, spacing at most 8 in", () => {
    const folds = layFolds({
      ...open,
      lengthMm: inches(60),
      headrailMm: inches(3),
      largestFoldMm: inches(8),
    });
    expect(folds.foldsMm).toHaveLength(7);
    expectNear(folds.bottomSectionMm, inches(3.8), 1e-6, "half fold");
    expectNear(folds.foldsMm[0] ?? 0, inches(7.6), 1e-6, "spacing");
    expectNear(folds.raisedHeightMm, inches(6.8), 1e-6, "raised");
    expectNear(folds.travelMm, inches(53.2), 1e-6, "travel");
  });

  it("“Roman shades” (2018): 58 in long, 6 rows, one every 6 in", () => {
    const folds = layFolds({
      ...open,
      lengthMm: inches(58),
      headrailMm: inches(3),
      rows: 6,
      spacingMm: inches(6),
    });
    expect(folds.foldsMm).toEqual(Array.from({ length: 6 }, () => inches(6)));
    expectNear(folds.headrailMm, inches(19), 1e-6, "left to the headrail");
  });
});

describe("rule without headrail", () => {
  it("“How far apart do I space my rings / lift cords”: s = L / (n − 1/2), first row s / 2", () => {
    // n counts the board line, so n − 1 rows carry rings.
    const n = 8;
    const folds = layFolds({ ...open, lengthMm: inches(60), headrailMm: 0, rows: n - 1 });
    expectNear(folds.foldsMm[0] ?? 0, inches(60) / (n - 0.5), 1e-6, "spacing");
    expectNear(folds.bottomSectionMm, inches(60) / (n - 0.5) / 2, 1e-6, "first row");
  });
});

describe("even-fold rule", () => {
  const slides = {
    lengthMm: centimetres(172),
    headrailMm: centimetres(4),
    hemBarMm: centimetres(3),
    ringStackMm: centimetres(3),
    largestFoldMm: 2000,
    smallestFoldMm: 50,
    stackMm: centimetres(20),
  };
  it("teaching slides “Подъемные шторы”: six folds of 27.5 cm break their own limit of 20 cm", () => {
    const folds = layEvenFolds({ ...slides, rows: 6 });
    expectNear(folds.foldsMm[0] ?? 0, centimetres(27.5), 1e-6, "fold");
    expectNear(folds.raisedHeightMm, centimetres(20.75), 1e-6, "raised");
    expect(folds.unmet).toContain("stack");
  });
  it("rounded up instead, seven folds of 23.57 cm keep it (18.8 cm)", () => {
    const folds = layEvenFolds(slides);
    expect(folds.foldsMm).toHaveLength(7);
    expectNear(folds.foldsMm[0] ?? 0, centimetres(23.57), 0.1, "fold");
    expectNear(folds.raisedHeightMm, centimetres(18.8), 0.2, "raised");
    expect(folds.unmet).toEqual([]);
  });
});

describe("headrail allowance", () => {
  // Workroom tutorials, “Headrail allowance explained”.
  it.each([
    [{ ribFaceMm: centimetres(3) }, 6.5],
    [{ mechanismDepthMm: centimetres(3) }, 5.5],
    [{ mechanismDepthMm: centimetres(4) }, 6.5],
  ])("%o gives %s cm", (parts, expectedCm) => {
    expectNear(headrailAllowanceMm(parts), centimetres(expectedCm), 1e-9);
  });
});

describe("graduated folds", () => {
  it("posts on graduated folds: 7, 6, 5 in from the bottom up", () => {
    // 3.5 + 7 + 6 + 5 + headrail 3 = 24.5 in.
    const folds = layFolds({
      ...open,
      lengthMm: inches(24.5),
      headrailMm: inches(3),
      gradeStepMm: inches(1),
      rows: 3,
    });
    folds.foldsMm.forEach((foldMm, i) => {
      expectNear(foldMm, inches(7 - i), 1e-6, `fold ${i + 1}`);
    });
  });
});

describe("for any ask", () => {
  const ask = fc.record({
    lengthMm: fc.double({ min: 50, max: 12_000, noNaN: true }),
    headrailMm: fc.double({ min: 0, max: 3000, noNaN: true }),
    skirtMm: fc.double({ min: 0, max: 3000, noNaN: true }),
    gradeStepMm: fc.constantFrom(0, 5, 25, 500),
    largestFoldMm: fc.double({ min: 20, max: 1000, noNaN: true }),
    smallestFoldMm: fc.double({ min: 1, max: 20, noNaN: true }),
    stackMm: fc.option(fc.double({ min: 1, max: 2000, noNaN: true }), { nil: undefined }),
    rows: fc.option(fc.integer({ min: 1, max: 500 }), { nil: undefined }),
    spacingMm: fc.option(fc.double({ min: 20, max: 1000, noNaN: true }), { nil: undefined }),
  });

  it("sections and folds add up to the length, and no fold is negative", () => {
    fc.assert(
      fc.property(ask, (asked) => {
        const folds = layFolds(asked);
        const sum =
          folds.bottomSectionMm +
          folds.foldsMm.reduce((total, foldMm) => total + foldMm, 0) +
          folds.headrailMm;
        return (
          Math.abs(sum - asked.lengthMm) < 1e-6 &&
          folds.foldsMm.every((foldMm) => foldMm > 0) &&
          folds.headrailMm >= 0 &&
          folds.travelMm > 0
        );
      }),
      { numRuns: 500 },
    );
  });

  it("what is reported as met is met", () => {
    fc.assert(
      fc.property(ask, (asked) => {
        const folds = layFolds(asked);
        const lowest = folds.foldsMm[0] ?? 0;
        return (
          (folds.unmet.includes("largest") ||
            folds.unmet.includes("length") ||
            lowest <= asked.largestFoldMm + 1e-6) &&
          (asked.stackMm === undefined ||
            folds.unmet.includes("stack") ||
            folds.unmet.includes("length") ||
            folds.raisedHeightMm <= asked.stackMm + 1e-6)
        );
      }),
      { numRuns: 500 },
    );
  });

  it("no smaller number of rows would have kept the largest spacing", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 300, max: 6000, noNaN: true }),
        fc.double({ min: 60, max: 400, noNaN: true }),
        (lengthMm, largestFoldMm) => {
          const asked = { ...open, lengthMm, headrailMm: 80, largestFoldMm, smallestFoldMm: 20 };
          const rows = layFolds(asked).foldsMm.length;
          const fewer = layFolds({ ...asked, rows: Math.max(1, rows - 1) });
          return rows === 1 || fewer.unmet.includes("largest");
        },
      ),
    );
  });
});
