import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { resolvedWith } from "../../../../test/job-with.ts";
import { laidAt } from "../../../../test/laid-shade.ts";
import { inches } from "../../../units/index.ts";
import { ribbedShape } from "../../folding/ribbed-shape.ts";

function laid(lengthMm: number, fold: Record<string, unknown>) {
  return laidAt(lengthMm, resolvedWith({ shade: { making: { fold } } }));
}

/** Fold lengths from the hem up: between rows, and from the top row to the headrail line. */
function folds({ grid }: ReturnType<typeof laid>): number[] {
  return [...grid.spacingsMm, grid.topSectionMm - grid.headrailMm];
}

/** Home-decor posts on graduated folds: 7, 6 and 5 in from the bottom. */
test("graduated by an inch: 7, 6, 5 in from the bottom", () => {
  const found = folds(laid(inches(24.5), { gradeStepMm: inches(1), rows: 3, headrailMm: inches(3) }));
  expect(found.map((mm) => mm / 25.4)).toEqual([7, 6, 5].map((inch) => expect.closeTo(inch, 9)));
});

/**
 * Workroom tutorials, glossary: in a cascade each fold shows an increment below the one in front. Checked by where
 * cloth hangs when it is raised: every fold by half its own length, the hem by the bottom section.
 */
describe("cascade", () => {
  test("raised, every fold and the hem show one step below the fold in front", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 900, max: 3000, noNaN: true }),
        fc.double({ min: 2, max: 12, noNaN: true }),
        fc.integer({ min: 2, max: 6 }),
        fc.double({ min: 0, max: 60, noNaN: true }),
        (lengthMm, cascadeMm, rows, skirtMm) => {
          const shade = laid(lengthMm, { cascadeMm, rows, headrailMm: 80, skirtMm });
          // From the front: the top fold first, the hem last.
          const hangs = [
            ...folds(shade)
              .map((mm) => mm / 2)
              .reverse(),
            shade.grid.bottomSectionMm - skirtMm,
          ];
          for (let i = 1; i < hangs.length; i += 1)
            expect((hangs[i] ?? 0) - (hangs[i - 1] ?? 0)).toBeCloseTo(cascadeMm, 6);
          const total = folds(shade).reduce((sum, mm) => sum + mm, 0) + shade.grid.bottomSectionMm + 80;
          expect(total).toBeCloseTo(lengthMm, 6);
        },
      ),
    );
  });

  test("drawn raised, each fold hangs lower than the one in front of it", () => {
    const { grid, form, size } = laid(1500, { cascadeMm: 20, rows: 5 });
    const bottoms = ribbedShape({ size, grid, form }, 1).section.folds.map(({ bottomYMm }) => bottomYMm);
    for (let i = 1; i < bottoms.length; i += 1)
      expect(bottoms[i - 1]).toBeGreaterThan((bottoms[i] ?? 0) + 10);
  });

  test.each([
    [{ cascadeMm: 10, rule: "even-fold" }, "shape.cascade-needs-free-folds"],
    [{ cascadeMm: 10, spacingMm: 200 }, "shape.cascade-needs-free-folds"],
    [{ cascadeMm: 150, rows: 6 }, "shape.cascade-too-steep"],
    [{ cascadeMm: 10, gradeStepMm: 30 }, "shape.cascade-and-graded"],
  ])("%o is told", (fold, id) => {
    expect(laid(1500, fold).findings.map((finding) => finding.id)).toContain(id);
  });
});
