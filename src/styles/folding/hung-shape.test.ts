import { describe, expect, test } from "vitest";
import { expectNear } from "../../../test/near.ts";
import { type FoldCloth, rigidityNmm, weightNPerMm2 } from "../../mechanics/index.ts";
import type { Grid } from "../../shade-plan/index.ts";
import { plainStretches } from "../base/plain-form.ts";
import { hungShape } from "./hung-shape.ts";
import { hangingFold, standingShape } from "./raised-shape.ts";

/** Rows of the same spacing below a headrail of 100 mm. */
function gridOf(spacingMm: number, count = 9): Grid {
  const rows = Array.from({ length: count }, (_, i) => {
    const fromHemMm = (i + 0.5) * spacingMm;
    return { number: i + 1, fromHemMm, yMm: (count + 0.5) * spacingMm + 100 - fromHemMm };
  });
  const travelMm = (rows[0]?.yMm ?? 0) - 100;
  return {
    rows,
    columns: [{ number: 1, xMm: 50 }],
    bottomSectionMm: spacingMm / 2,
    spacingsMm: rows.slice(1).map(() => spacingMm),
    topSectionMm: rows.at(-1)?.yMm ?? 0,
    columnSpacingMm: 0,
    headrailMm: 100,
    skirtMm: 0,
    raisedHeightMm: 100 + spacingMm / 2,
    travelMm,
    coveredWhenRaisedMm: 0,
  };
}

const cloth = (change: Partial<FoldCloth> = {}): FoldCloth => ({
  weightNPerMm2: weightNPerMm2(370),
  rigidityNmm: rigidityNmm(370, 23),
  thicknessMm: 0.8,
  skirt: { lengthMm: 90, weightNPerMm: 0.0048, centreMm: 84 },
  paneMm: 38,
  ...change,
});

function at(grid: Grid, raise: number, hang: FoldCloth | undefined) {
  return hungShape(standingShape(grid, plainStretches(grid), raise), grid, hang);
}

describe("folds that hang as their cloth bends", () => {
  test("rows, hem and states stay where the lift puts them; the cloth keeps its length", () => {
    const grid = gridOf(180);
    for (const raise of [0, 0.2, 0.55, 1]) {
      const [limp, hung] = [at(grid, raise, undefined), at(grid, raise, cloth())];
      expect(hung.hung).toBe(true);
      expect(limp.hung).toBeUndefined();
      expect(hung.rows).toEqual(limp.rows);
      expect(hung.hemYMm).toBe(limp.hemYMm);
      hung.folds.forEach((fold, i) => {
        expect(fold.state).toBe(limp.folds[i]?.state);
        const length = fold.outline
          .slice(1)
          .reduce(
            (sum, [x, y], k) =>
              sum + Math.hypot(x - (fold.outline[k]?.[0] ?? 0), y - (fold.outline[k]?.[1] ?? 0)),
            0,
          );
        expectNear(length, fold.arcMm, 1e-6);
        expectNear(fold.outline.at(-1)?.[1] ?? 0, fold.lowerYMm, 1e-6);
      });
    }
  });

  test("the hem swings back at its own length once folds lean on it", () => {
    const grid = gridOf(180);
    const { hemEnd, rows } = at(grid, 1, cloth());
    const [x, y] = hemEnd ?? [0, 0];
    expect(x).toBeLessThan(0);
    expectNear(Math.hypot(x, y - (rows[0]?.yMm ?? 0)), grid.bottomSectionMm, 1e-9);
    expectNear(at(grid, 0, cloth()).hemEnd?.[0] ?? 1, 0, 1e-12);
  });

  test("over a soft fold at the hem those above lean forward and never through it", () => {
    const grid = gridOf(180);
    const shape = standingShape(grid, plainStretches(grid), 1);
    const under = hangingFold({ row: 0, upperYMm: shape.rows[0]?.yMm ?? 0, gapMm: 90, clothMm: 160 });
    const over = hungShape(shape, grid, cloth(), under);
    expect(over.folds.length).toBe(10);
    expect(over.folds[0]?.row).toBe(0);
    expect(over.hemEnd).toBeUndefined();
    expect(over.outMm).toBeGreaterThan(at(grid, 1, cloth()).outMm);
  });

  test("what the solver does not find is drawn as limp cloth, all of it, and says so", () => {
    // Nine folds of 56 mm of cloth half a hand thick: no room for the tenth.
    const grid = gridOf(56);
    const thick = cloth({
      thicknessMm: 50,
      rigidityNmm: 5.67 ** 3 * 1e-6,
      weightNPerMm2: 1e-6,
      paneMm: 0.92,
    });
    const shape = at(grid, 0.995, thick);
    expect(shape.hung).toBeUndefined();
    expect(shape).toEqual(at(grid, 0.995, undefined));
  });
});
