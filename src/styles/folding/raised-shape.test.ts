import { describe, expect, test } from "vitest";
import type { Grid } from "../../shade-plan/index.ts";
import { plainStretches } from "../base/plain-form.ts";
import { raisedShape } from "./raised-shape.ts";

/**
 * “Calculating pockets spacing” (soft-furnishing FAQ): length 99 cm, headrail 7, seven half folds. Rods at 13.1,
 * 39.4, 65.7 cm from the hem (13.14 and twice it), raised height 20 cm.
 */
function published(): Grid {
  const half = 920 / 7;
  const fromHem = [half, 3 * half, 5 * half];
  return {
    rows: fromHem.map((fromHemMm, i) => ({ number: i + 1, fromHemMm, yMm: 990 - fromHemMm })),
    columns: [{ number: 1, xMm: 50 }],
    bottomSectionMm: half,
    spacingsMm: [2 * half, 2 * half],
    topSectionMm: 990 - 5 * half,
    columnSpacingMm: 0,
    headrailMm: 70,
    skirtMm: 0,
    raisedHeightMm: 70 + half,
    travelMm: 990 - 70 - half,
    coveredWhenRaisedMm: 0,
  };
}

const shapeOf = (grid: Grid, raise: number) => raisedShape(grid, plainStretches(grid), raise);

describe("a shade between lowered and raised", () => {
  test("lowered, every row is where it was marked and nothing stands out", () => {
    const shape = shapeOf(published(), 0);
    expect(shape.rows.map((row) => row.yMm)).toEqual(published().rows.map((row) => row.yMm));
    expect(shape.hemYMm).toBeCloseTo(990, 6);
    expect(shape.outMm).toBe(0);
    expect(shape.folds.map((fold) => fold.state)).toEqual(["flat", "flat", "flat"]);
  });

  test("raised, the hem hangs at the published 20 cm and every fold is gathered", () => {
    const shape = shapeOf(published(), 1);
    expect(Math.abs(shape.hemYMm - 200)).toBeLessThan(5);
    expect(shape.folds.map((fold) => fold.state)).toEqual(["gathered", "gathered", "gathered"]);
    for (const row of shape.rows) expect(row.yMm).toBeCloseTo(70, 6);
  });

  test("the bottom row rises by the share of the travel, and gathers from the bottom up", () => {
    for (const raise of [0.1, 0.33, 0.5, 0.71, 0.9]) {
      const grid = published();
      const shape = shapeOf(grid, raise);
      expect((grid.rows[0]?.yMm ?? 0) - (shape.rows[0]?.yMm ?? 0)).toBeCloseTo(raise * grid.travelMm, 6);
      expect(shape.folds.filter((fold) => fold.state === "partial").length).toBeLessThanOrEqual(1);
      const order = shape.folds.map((fold) => ["gathered", "partial", "flat"].indexOf(fold.state));
      expect(order).toEqual([...order].sort((a, b) => a - b));
    }
  });

  test("no cloth is made or lost: flat part, folds and bottom section add up to the length", () => {
    for (const raise of [0, 0.2, 0.5, 0.84, 1]) {
      const { folds } = shapeOf(published(), raise);
      const top = folds.at(-1)?.upperYMm ?? 0;
      const length = top + folds.reduce((sum, fold) => sum + fold.arcMm, 0) + published().bottomSectionMm;
      expect(length).toBeCloseTo(990, 6);
    }
  });

  test("beyond its ends it stays at them; without rows it hangs straight", () => {
    expect(shapeOf(published(), 3).hemYMm).toBe(shapeOf(published(), 1).hemYMm);
    expect(shapeOf(published(), -1).hemYMm).toBe(shapeOf(published(), 0).hemYMm);
    const bare = { ...published(), rows: [], bottomSectionMm: 100, topSectionMm: 400, travelMm: 0 };
    expect(shapeOf(bare, 0.5).hemYMm).toBe(500);
  });
});
