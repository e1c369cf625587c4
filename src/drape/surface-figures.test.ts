import { describe, expect, test } from "vitest";
import { hobbled } from "../../test/gallery/fold-style-windows.ts";
import { gatheredBalloon } from "../../test/gallery/gathered-windows.ts";
import { type Case, outside, relaxed } from "../../test/gallery/windows.ts";
import { expectNear } from "../../test/near.ts";
import { drapeShade } from "./drape-shade.ts";
import { differs, type SurfaceFigure, surfaceFigures } from "./surface-figures.ts";

function figuresOf({ shade }: Case, raise: number): SurfaceFigure[] {
  return surfaceFigures(shade, raise, drapeShade(shade, raise));
}

function one(figures: readonly SurfaceFigure[], kind: SurfaceFigure["kind"]): SurfaceFigure {
  const found = figures.find((figure) => figure.kind === kind);
  if (found === undefined) throw new Error(`no figure ${kind}`);
  return found;
}

describe("figures read from the cloth as it hangs", () => {
  test("a flat shade let down: its length, no dip, nothing drawn in", () => {
    const figures = figuresOf(outside(), 0);
    const length = outside().shade.size.finishedLengthMm;
    expectNear(one(figures, "lowest").surfaceMm, length, 2);
    expectNear(one(figures, "draws-in").surfaceMm, 0, 1e-9);
    expect(figures.filter(differs)).toEqual([]);
  });

  test("folds of a flat and of a hobbled shade are the plan's own sections, half way up too", () => {
    for (const make of [outside, hobbled])
      for (const kind of ["lowest", "stands-out"] as const) {
        const { surfaceMm, planMm } = one(figuresOf(make(), 0.5), kind);
        expectNear(surfaceMm, planMm ?? 0, 2, kind);
      }
  });

  // Two ways to one figure: a net of cloth at rest, and the catenary that the plan draws by the length of the lower edge.
  test("the lower edge of a relaxed shade and the scallops of a gathered one dip as their catenaries do, within a tenth and an eighth", () => {
    for (const [make, share] of [
      [relaxed, 1 / 10],
      [gatheredBalloon, 1 / 8],
    ] as const) {
      const { surfaceMm, planMm } = one(figuresOf(make(), 0), "dip");
      expectNear(surfaceMm, planMm ?? 0, share * (planMm ?? 0));
    }
  });

  test("the cloth along each column of a relaxed shade is that of the plan, within the stretch of its threads", () => {
    for (const raise of [0, 1])
      for (const { kind, surfaceMm, planMm = 0 } of figuresOf(relaxed(), raise))
        if (kind === "along-column") expectNear(surfaceMm, planMm, 0.004 * planMm);
  });

  test("a figure differs beyond a tenth and some millimetres, and only where the plan has one", () => {
    const figure = (surfaceMm: number, planMm?: number): SurfaceFigure => ({
      ...{ kind: "dip", surfaceMm },
      ...(planMm === undefined ? {} : { planMm }),
    });
    expect(differs(figure(109, 100))).toBe(false);
    expect(differs(figure(111, 100))).toBe(true);
    expect(differs(figure(15, 10))).toBe(false);
    expect(differs(figure(500))).toBe(false);
  });
});
