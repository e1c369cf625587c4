import { describe, expect, test } from "vitest";
import { resolvedWith } from "../../../../test/job-with.ts";
import { expectNear } from "../../../../test/near.ts";
import type { Making } from "../../../job/index.ts";
import { inches } from "../../../units/index.ts";
import { dipOf } from "./dip.ts";

const settingsOf = (relax: Making["relax"]) =>
  resolvedWith({ shade: { style: "relaxed", making: { relax } } }).making.relax;

/**
 * A shallow catenary is a parabola: f ≈ √(3·W·Δ/8), the first term of the series of any handbook of statics
 * (Beer & Johnston, Vector Mechanics, cables; from memory). 1.2 in more over 36 in dips by 4 in.
 */
describe("dip and extra width", () => {
  test("36 in wide and 1.2 in more at the hem: 4 in, as the parabola gives", () => {
    const dip = dipOf(settingsOf({ extraWidthMm: inches(1.2) }), inches(36), inches(60));
    expectNear(dip.dipMm, inches(Math.sqrt((3 * 36 * 1.2) / 8)), inches(0.05), "dip");
    expectNear(dip.dipMm, inches(4), inches(0.08), "dip");
  });

  /** Exact values of the catenary: arc over span, sag over span, by S/L = sinh u / u, f/L = (cosh u − 1)/2u. */
  test.each([
    [1.01, 0.0614512],
    [1.05, 0.1393042],
    [1.1, 0.2003008],
    [1.2, 0.2923438],
  ])("cloth %f of the span dips by %f of it, and the other way round", (arc, sag) => {
    const spanMm = 800;
    const byWidth = dipOf(settingsOf({ extraWidthMm: (arc - 1) * spanMm }), spanMm, 3000);
    expectNear(byWidth.dipMm / spanMm, sag, 1e-6, "dip");
    const byDip = dipOf(settingsOf({ dipMm: sag * spanMm }), spanMm, 3000);
    expectNear(byDip.extraMm / spanMm, arc - 1, 1e-6, "extra width");
  });

  test("where both are given the dip counts, and it is said when they do not agree", () => {
    const both = dipOf(settingsOf({ dipMm: 100, extraWidthMm: 5 }), 800, 3000);
    expectNear(both.dipMm, 100, 1e-6, "dip");
    expect(both.disagrees).toBe(true);
    expect(dipOf(settingsOf({ dipMm: 100, extraWidthMm: both.extraMm }), 800, 3000).disagrees).toBe(false);
  });

  test("a dip of more than a third of the length is cut down to it", () => {
    const deep = dipOf(settingsOf({ dipMm: 900 }), 800, 1500);
    expectNear(deep.dipMm, 500, 1e-6, "dip");
    expect(deep.tooDeep).toBe(true);
    expect(dipOf(settingsOf({ dipMm: 499 }), 800, 1500).tooDeep).toBe(false);
  });
});
