import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { resolvedWith } from "../../test/job-with.ts";
import { expectNear } from "../../test/near.ts";
import type { JobInput } from "../job/index.ts";
import { inches, markMm, RULERS } from "../units/index.ts";
import { measure } from "./index.ts";
import { diagonalMisfitMm, leanMm } from "./squareness.ts";

type WindowInput = JobInput["rooms"][number]["windows"][number];

function measured(window: Partial<WindowInput>, job: Partial<JobInput> = {}) {
  return measure(resolvedWith(window, job));
}

const ids = (result: ReturnType<typeof measured>) => result.findings.map((finding) => finding.id);

describe("finished size", () => {
  it("“Mock Roman shade” (2014): width = opening − 1/2 in, board = opening − 1 in", () => {
    const { values: size } = measured({
      opening: { widthsMm: [inches(36)], heightsMm: [inches(60)] },
      shade: { making: { mount: { insideWidthOffMm: inches(1 / 2), boardShorterMm: inches(1 / 2) } } },
    });
    expectNear(size.finishedWidthMm, inches(35.5), 1e-6);
    expectNear(size.boardLengthMm, inches(35), 1e-6);
  });

  it("US sewing handbook: board = finished width − 1/4 in", () => {
    const { values: size } = measured({
      opening: { widthsMm: [inches(36)], heightsMm: [inches(60)] },
      shade: { mount: "to-size" },
    });
    expectNear(size.boardLengthMm, inches(35.75), 1e-6);
  });

  it("takes the narrowest and the shortest inside, the widest and the tallest outside", () => {
    const opening = { widthsMm: [900, 896, 902], heightsMm: [1500, 1504, 1498] };
    const inside = measured({ opening }, { units: { system: "metric", ruler: "1 mm" } }).values;
    expect([inside.openingWidthMm, inside.openingHeightMm]).toEqual([896, 1498]);
    const outside = measured({ opening, shade: { mount: "outside" } }).values;
    expect([outside.openingWidthMm, outside.openingHeightMm]).toEqual([902, 1504]);
  });

  it("inside never comes out larger than the opening, and is on a ruler mark", () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 200, max: 3000, noNaN: true }), { minLength: 1, maxLength: 3 }),
        fc.array(fc.double({ min: 300, max: 3000, noNaN: true }), { minLength: 1, maxLength: 3 }),
        fc.constantFrom(...RULERS),
        (widthsMm, heightsMm, ruler) => {
          const system = ruler === "1 mm" ? "metric" : "imperial";
          const { values: size } = measured(
            { opening: { widthsMm, heightsMm } },
            { units: { system, ruler } },
          );
          const marks = size.finishedWidthMm / markMm(ruler);
          return (
            size.finishedWidthMm <= Math.min(...widthsMm) &&
            size.finishedLengthMm <= Math.min(...heightsMm) &&
            Math.abs(marks - Math.round(marks)) < 1e-6
          );
        },
      ),
    );
  });
});

describe("squareness from the diagonals", () => {
  /** A parallelogram built from its corners: the second route to its diagonals. */
  function parallelogram(widthMm: number, heightMm: number, leanBy: number): [number, number] {
    const plumb = Math.sqrt(heightMm ** 2 - leanBy ** 2);
    return [Math.hypot(widthMm + leanBy, plumb), Math.hypot(widthMm - leanBy, plumb)];
  }

  it("finds the lean that a drawn parallelogram has", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 300, max: 3000, noNaN: true }),
        fc.double({ min: 300, max: 3000, noNaN: true }),
        fc.double({ min: 0, max: 100, noNaN: true }),
        (w, h, lean) => {
          const [a, b] = parallelogram(w, h, lean);
          return Math.abs(leanMm(w, a, b) - lean) < 1e-6 && Math.abs(diagonalMisfitMm(w, h, a, b)) < 1e-6;
        },
      ),
    );
  });

  const at = (leanBy: number, off = inches(1 / 2)) => {
    const [a, b] = parallelogram(900, 1500, leanBy);
    return measured({
      opening: { widthsMm: [900, 900, 900], heightsMm: [1500, 1500, 1500], diagonalsMm: [a, b] },
      shade: { making: { mount: { insideWidthOffMm: off } } },
    });
  };

  it("ignores up to 1/4 in, warns to 1/2 in, advises an outside mount beyond (from memory)", () => {
    expect(ids(at(4))).not.toContain("measure.slightly-out-of-square");
    expect(ids(at(8))).toContain("measure.slightly-out-of-square");
    const far = at(20).findings.find((finding) => finding.id === "measure.out-of-square");
    expect(far?.severity).toBe("fix");
    expect(far?.remedies[0]?.patch).toEqual([
      { op: "replace", path: "/rooms/0/windows/0/shade/mount", value: "outside" },
    ]);
  });

  it("weighs a lean greater than the deduction more", () => {
    const severity = (off: number) =>
      at(8, off).findings.find((finding) => finding.id === "measure.slightly-out-of-square")?.severity;
    expect(severity(inches(1 / 2))).toBe("note");
    expect(severity(3)).toBe("fix");
  });

  it("tells a misread diagonal from an opening out of square", () => {
    const result = measured({
      opening: { widthsMm: [900, 900, 900], heightsMm: [1500, 1500, 1500], diagonalsMm: [1749, 1700] },
    });
    expect(ids(result)).toContain("measure.diagonals-misread");
    expect(result.values.toMeasure).toContain("both diagonals once more");
  });
});

describe("what is still to measure", () => {
  it("names every measurement that is missing", () => {
    expect(measured({}).values.toMeasure).toEqual([
      "the width at top, middle and bottom",
      "the height at left, centre and right",
      "both diagonals",
      "the depth of the recess",
      "the sill’s height above the floor",
    ]);
    expect(ids(measured({}))).toContain("measure.incomplete");
  });
  it("asks nothing of a shade made to size", () => {
    expect(measured({ shade: { mount: "to-size" } }).findings).toEqual([]);
  });
});

describe("the floor", () => {
  it("finds a hem that would lie below it and offers a shorter overlap", () => {
    const result = measured({
      opening: { widthsMm: [900], heightsMm: [2000], sillAboveFloorMm: 40 },
      shade: { mount: "outside" },
    });
    const floor = result.findings.find((finding) => finding.id === "measure.floor");
    expect(floor?.remedies).toHaveLength(1);
  });
});

describe("deductions that leave nothing", () => {
  it("is a stop, not a crash", () => {
    const result = measured({
      opening: { widthsMm: [60], heightsMm: [60] },
      shade: { making: { mount: { insideWidthOffMm: 500, insideLengthOffMm: 500 } } },
    });
    expect(result.findings.find((finding) => finding.id === "measure.too-small")?.severity).toBe("stop");
    expect(result.values.finishedWidthMm).toBeGreaterThan(0);
  });
});
