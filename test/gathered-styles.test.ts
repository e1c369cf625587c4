import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { JobInput } from "../src/job/index.ts";
import { plan, type ShadePlan } from "../src/plan/index.ts";
import { flatSize, LAYERS } from "../src/shade-plan/index.ts";
import { STYLE_SHAPES } from "../src/styles/shapes/index.ts";
import { jobWith } from "./job-with.ts";
import { expectNear } from "./near.ts";

type WindowInput = JobInput["rooms"][number]["windows"][number];
type Making = NonNullable<NonNullable<WindowInput["shade"]>["making"]>;

const GATHERED = ["austrian", "gathered-balloon", "festoon"] as const;
const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const span = fc.oneof(mm(50, 12_000), mm(300, 2500), fc.constantFrom(50, 12_000));
const length = fc.oneof(mm(0, 20_000), mm(0, 200), fc.constantFrom(0, 20_000));
const spacing = fc.oneof(mm(20, 20_000), mm(40, 400));
const some = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: undefined });

/** Any gathered shade that a job may hold: most of them are impossible. */
const anyWindow: fc.Arbitrary<WindowInput> = fc
  .record({
    style: fc.constantFrom(...GATHERED),
    mount: fc.constantFrom("inside" as const, "outside" as const, "to-size" as const),
    widthMm: span,
    heightMm: span,
    layers: fc.constantFrom({ lining: null }, {}, { interlining: "domett" }, { blackout: "blackout-lining" }),
    gather: fc.record({
      lengthFullness: some(mm(1, 5)),
      widthFullness: some(mm(1, 5)),
      scallopExtraMm: some(length),
      sagMm: some(length),
      hemExtraMm: some(length),
      hemRowMm: some(length),
      drawInMm: some(length),
      weight: fc.constantFrom("rod" as const, "shot-bags" as const, "none" as const),
      frillMm: some(length),
      frillEdges: some(fc.constantFrom("hem" as const, "sides" as const, "sides-and-hem" as const)),
      frillDouble: some(fc.boolean()),
    }),
    columns: fc.record({
      largestSpacingMm: some(spacing),
      edgeInsetMm: some(fc.oneof(mm(0.01, 20_000), mm(1, 100))),
      count: some(
        fc.oneof({ weight: 8, arbitrary: fc.integer({ min: 2, max: 12 }) }, fc.integer({ min: 2, max: 60 })),
      ),
    }),
    fold: fc.record({
      rows: some(
        fc.oneof({ weight: 8, arbitrary: fc.integer({ min: 1, max: 15 }) }, fc.integer({ min: 1, max: 200 })),
      ),
      spacingMm: some(spacing),
      largestSpacingMm: some(spacing),
      headrailMm: some(length),
      stackMm: some(mm(0.01, 20_000)),
    }),
  })
  .map(({ style, mount, widthMm, heightMm, layers, ...making }) => ({
    id: "window-1",
    name: "Window",
    opening: { widthsMm: [widthMm], heightsMm: [heightMm] },
    shade: { style, mount, ...layers, making: defined(making) },
  }));

function defined(making: Record<string, Record<string, unknown>>): Making {
  return JSON.parse(JSON.stringify(making)) as Making;
}

function shadeOf(window: Partial<WindowInput>): ShadePlan {
  const [shade] = plan(jobWith(window)).shades;
  if (shade === undefined) throw new Error("invalid test job: no shade");
  return shade;
}

function shapeAt(shade: ShadePlan, raise: number) {
  return STYLE_SHAPES[shade.style](shade, raise);
}

function everyShade(check: (shade: ShadePlan) => void, numRuns = 60): void {
  fc.assert(
    fc.property(anyWindow, (window) => check(shadeOf(window))),
    { numRuns },
  );
}

describe("any gathered shade", () => {
  it("has stretches whose cord adds up to the finished length and never less cloth than cord", () => {
    everyShade(({ form, size }) => {
      const cord = form.stretches.reduce((sum, { cordMm }) => sum + cordMm, 0);
      expectNear(cord, size.finishedLengthMm, 1e-6, "cord");
      for (const { row, cordMm, clothMm } of form.stretches) {
        if (clothMm < cordMm - 1e-6) throw new Error(`row ${row}: ${clothMm} of cloth on ${cordMm} of cord`);
      }
    });
  });

  it("takes as much cloth along its length as finished length and allowances say", () => {
    everyShade(({ form, size }) => {
      const cloth = form.stretches.reduce((sum, { clothMm }) => sum + clothMm, 0);
      const flat = flatSize(size, form, "face").lengthMm;
      expectNear(cloth, flat, 1e-6 * flat, "cloth");
    });
  });

  it("takes as much cloth across as its scallops and side strips say", () => {
    everyShade(({ form, size, grid, cloth }) => {
      const scallops = form.swags.reduce((sum, { arcMm }) => sum + arcMm, 0);
      const first = grid.columns[0]?.xMm ?? 0;
      const strips = first + size.finishedWidthMm - (grid.columns.at(-1)?.xMm ?? 0);
      const drawIn = form.allowances.find(({ label }) => label === "sides that draw in")?.widthMm ?? 0;
      const flat = flatSize(size, form, "face").widthMm;
      expectNear(scallops + strips + drawIn, flat, 1e-6 * flat, "cloth across");
      for (const layer of LAYERS) {
        const cut = cloth.layers.find((one) => one.layer === layer);
        if (cut !== undefined && cut.cutWidthMm < flatSize(size, form, layer).widthMm - 1e-6 * flat)
          throw new Error(`${layer} is cut ${cut.cutWidthMm} wide, less than hangs`);
      }
    });
  });

  it("is seen alike from its middle to either side, without NaN, at every height", () => {
    everyShade((shade) => {
      const width = shade.size.finishedWidthMm;
      for (const raise of [0, 0.37, 1]) {
        const { pieces, lines, lowestYMm, swagSection } = shapeAt(shade, raise);
        const points = [...pieces.map(({ outline }) => outline), ...lines.map((line) => line.points)];
        for (const [x, y] of [...points.flat(), ...(swagSection ?? [])]) {
          if (!Number.isFinite(x) || !Number.isFinite(y)) throw new Error(`a point at ${x}, ${y}`);
        }
        for (const outline of points) {
          const mean = outline.reduce((sum, [x]) => sum + x, 0) / outline.length;
          if (outline.length > 6) expectNear(mean, width / 2, 1e-6 * width, "middle of an outline");
        }
        expect(lowestYMm).toBeLessThanOrEqual(shade.size.finishedLengthMm + 1e-6);
      }
    }, 30);
  });

  it("ends at its finished length when lowered, and at its raised height when raised", () => {
    everyShade((shade) => {
      expectNear(shapeAt(shade, 0).lowestYMm ?? 0, shade.size.finishedLengthMm, 1e-6, "lowered");
      expectNear(shapeAt(shade, 1).lowestYMm ?? 0, shade.grid.raisedHeightMm, 1e-6, "raised");
    });
  });

  it("rises without ever sinking", () => {
    everyShade((shade) => {
      const lowest = [0, 0.2, 0.4, 0.6, 0.8, 1].map((raise) => shapeAt(shade, raise).lowestYMm ?? 0);
      lowest.slice(1).forEach((y, i) => {
        expect(y).toBeLessThanOrEqual((lowest[i] ?? 0) + 1e-6);
      });
    });
  });
});
