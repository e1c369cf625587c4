import fc from "fast-check";
import { immutableJSONPatch } from "immutable-json-patch";
import { describe, expect, test } from "vitest";
import { anyMaking } from "../../test/arbitrary-job.ts";
import { jobWith } from "../../test/job-with.ts";
import { expectNear } from "../../test/near.ts";
import type { Remedy } from "../figures/index.ts";
import { type Job, type JobInput, jobSchema } from "../job/index.ts";
import { foldsAtHeight } from "../mechanics/index.ts";
import { plan } from "../plan/index.ts";
import type { Folds } from "../shade-plan/index.ts";
import { uprightN } from "./break-way.ts";

const applyPatch = (job: Job, patch: Remedy["patch"]) =>
  immutableJSONPatch(JSON.parse(JSON.stringify(job)), patch as never);

type Window = Parameters<typeof jobWith>[0];

function shadeOf(window: Window, job: Partial<JobInput> = {}) {
  const [shade] = plan(jobWith(window, job)).shades;
  if (shade === undefined) throw new Error("no shade");
  return shade;
}

function foldsOf(window: Window, job: Partial<JobInput> = {}): Folds {
  const { folds } = shadeOf(window, job);
  if (folds === undefined) throw new Error("no folds");
  return folds;
}

const stiff = (bendingLengthMm: number | undefined) => ({
  cloths: [{ id: "own", name: "Own", usableWidthMm: 1370, massGsm: 230, bendingLengthMm }],
});
const own = (making = {}): Window => ({ shade: { face: "own", lining: null, making } });

describe("how a shade folds", () => {
  test("loose layers: 230 g/m² at 25 mm with 140 g/m² at 20 mm bend as 23.36 mm (Σwc³/Σw by hand)", () => {
    const { bendingMm, cloth, measured } = foldsOf({});
    expectNear(bendingMm, Math.cbrt((230 * 15_625 + 140 * 8000) / 370), 1e-9);
    expectNear(cloth.weightNPerMm2, 370 * 9.80665e-9, 1e-15);
    expect(measured).toBe(true);
  });

  test("a shade of two half folds and five rows stands out by two to five inches, as trade guides to full recess say", () => {
    // Common practice, no source: 2 1/2 to 4 in for lined flat shades.
    const { outMm, behindMm } = foldsOf({});
    expect(outMm).toBeGreaterThan(50);
    expect(outMm).toBeLessThan(125);
    expect(behindMm).toBeGreaterThan(0);
  });

  test("the stack in the plan and the folds that are drawn stand out alike", () => {
    const { folds, grid } = shadeOf({});
    if (folds === undefined) throw new Error("no folds");
    expect(folds.arcsMm.length).toBe(grid.rows.length);
    const laid = foldsAtHeight(
      folds.cloth,
      folds.arcsMm.map((arcMm) => ({ arcMm, gapMm: 0 })),
    );
    const drawn = Math.max(...(laid?.folds.map(({ outMm }) => outMm) ?? []));
    expectNear(drawn + folds.cloth.thicknessMm / 2, folds.outMm, 0.06 * folds.outMm);
  });

  test("stiffer cloth stands out more and needs more pull to start, up to where the folds stand level", () => {
    let was = foldsOf(own(), stiff(12));
    for (const bending of [15, 18, 22, 26]) {
      const now = foldsOf(own(), stiff(bending));
      expect(now.outMm).toBeGreaterThan(was.outMm);
      expect(now.openOutMm).toBeGreaterThan(was.openOutMm);
      expect(now.startN).toBeGreaterThan(was.startN);
      was = now;
    }
  });

  test("cloth drawn in across, or in swags, has no such section", () => {
    expect(shadeOf({ shade: { style: "austrian" } }).folds).toBeUndefined();
    expect(shadeOf({ shade: { style: "gathered-balloon" } }).folds).toBeUndefined();
  });
});

const idsOf = (shade: ReturnType<typeof shadeOf>) => shade.findings.map(({ id }) => id);

describe("what is said of it", () => {
  test("unmeasured cloth: unproven, with how to measure it; measured: nothing", () => {
    const finding = shadeOf(own(), stiff(undefined)).findings.find(
      ({ id }) => id === "folds.stiffness-unknown",
    );
    expect(finding?.severity).toBe("unproven");
    expect(finding?.text).toContain("slide it over a straight edge");
    expect(idsOf(shadeOf(own(), stiff(25)))).not.toContain("folds.stiffness-unknown");
  });

  test("bonded layers: no less stiff than loose ones, and what a strip of them measured is taken", () => {
    const making = (lining: object) => shadeOf({ shade: { lining: "cotton-lining", making: { lining } } });
    const [loose, unmeasured] = [making({}), making({ bonded: true })];
    expect(unmeasured.folds?.bendingMm).toBe(loose.folds?.bendingMm);
    const told = unmeasured.findings.find(({ id }) => id === "folds.stiffness-unknown")?.text;
    expect(told).toMatch(/bonded.*at least/);
    const measured = making({ bonded: true, bondedBendingMm: 60 });
    expect(measured.folds?.bendingMm).toBe(60);
    expect(idsOf(measured)).not.toContain("folds.stiffness-unknown");
    expect(measured.folds?.outMm).toBeGreaterThan(loose.folds?.outMm ?? 0);
    expect(measured.steps.map(({ id }) => id)).not.toContain("make-catch-layers");
  });

  test("the guide’s line falls by 41.5° (IS 6490:1971)", () => {
    for (const [fall, run] of [
      [88, 100],
      [7, 8],
    ] as const) {
      expectNear((Math.atan(fall / run) * 180) / Math.PI, 41.5, 0.4);
    }
  });

  // Timoshenko & Gere, Theory of Elastic Stability: M = 3EIθ/l of a strut hinged at its far end; √(EI·T)·θ of a long tie
  // under tension T. From memory.
  test("to hold a top upright: 3Bθ/a of cloth that weighs nothing, √(B·T)·θ of limp cloth", () => {
    expectNear(uprightN({ rigidityNmm: 40, weightNPerMm2: 0 }, 80), (3 * 40) / 80, 1e-12);
    const limp = uprightN({ rigidityNmm: 1e-4, weightNPerMm2: 2e-6 }, 100);
    expectNear(limp / Math.sqrt(1e-4 * 2e-6 * 100), 1, 1e-3);
  });

  test("bare cloth of two bays sags as a beam: w b⁴ / 184.634 B (AWC Design Aid 6, fig. 29)", () => {
    const { cloth, sag } = foldsOf({});
    const sagMm = (cloth.weightNPerMm2 * sag.clothSpanMm ** 4) / (184.634 * cloth.rigidityNmm);
    expectNear(sagMm / sag.limitMm, 1, 3e-3);
  });

  test("stiff cloth over a light hem breaks backwards; ribs at the rows stop it, and the remedy sets them", () => {
    const window = own({ board: { bar: "bar-wood-25x3" } });
    const job = jobWith(window, stiff(70));
    const shade = plan(job).shades[0];
    const finding = shade?.findings.find(({ id }) => id === "folds.break-backwards");
    expect(shade?.folds?.breaks).not.toBe("forward");
    expect(finding).toBeDefined();
    const patched = jobSchema.parse(applyPatch(job, finding?.remedies[0]?.patch ?? []));
    expect(plan(patched).shades[0]?.folds?.breaks).toBe("forward");
    expect(foldsOf(own(), stiff(22)).breaks).toBe("forward");
  });

  test("a slack rib sags between columns far apart; each remedy mends it", () => {
    const making = {
      ribs: { kind: "lining-pocket", rib: "rib-rod-4" },
      columns: { largestSpacingMm: 800 },
    } as const;
    const job = jobWith({
      opening: { widthsMm: [800], heightsMm: [1500] },
      shade: { lining: "cotton-lining", making },
    });
    const finding = plan(job).shades[0]?.findings.find(({ id }) => id === "folds.ribs-sag");
    expect(finding?.severity).toBe("fix");
    expect(finding?.remedies.length).toBeGreaterThan(1);
    for (const { patch } of finding?.remedies ?? []) {
      const patched = plan(jobSchema.parse(applyPatch(job, patch))).shades[0];
      expect(patched?.findings.map(({ id }) => id)).not.toContain("folds.ribs-sag");
    }
  });

  test("a recess that holds the trained stack but not the fresh one is to be minded, a shallower one to be mended", () => {
    const at = (recessDepthMm: number) =>
      idsOf(
        shadeOf({
          opening: { widthsMm: [900], heightsMm: [1500], recessDepthMm },
          shade: { mount: "inside" },
        }),
      );
    expect(at(40)).toContain("board.recess-too-shallow");
    expect(at(80)).toContain("board.recess-tight");
    expect(at(200).filter((id) => id.startsWith("board.recess"))).toEqual([]);
  });
});

describe("any shade", () => {
  const cloth = fc.record({
    massGsm: fc.double({ min: 1, max: 3000, noNaN: true }),
    bendingLengthMm: fc.option(fc.double({ min: 3, max: 200, noNaN: true }), { nil: undefined }),
  });
  const span = fc.oneof(fc.integer({ min: 50, max: 12_000 }), fc.integer({ min: 400, max: 2500 }));

  test("folds to finite figures, and remedies leave a valid job", () => {
    fc.assert(
      fc.property(cloth, span, span, anyMaking, (one, width, height, making) => {
        const job = jobWith(
          { opening: { widthsMm: [width], heightsMm: [height] }, shade: { face: "own", making } },
          { cloths: [{ id: "own", name: "Own", usableWidthMm: 1370, ...one }] },
        );
        const shade = plan(job).shades[0];
        const { folds } = shade ?? {};
        if (folds !== undefined) {
          const { outMm, behindMm, trainedMm, openOutMm, startN, sag } = folds;
          for (const value of [outMm, behindMm, trainedMm, openOutMm, startN, sag.barMm, sag.limitMm]) {
            expect(Number.isFinite(value) && value >= 0).toBe(true);
          }
        }
        for (const { id, remedies } of shade?.findings ?? []) {
          if (!id.startsWith("folds.")) continue;
          for (const { patch } of remedies) jobSchema.parse(applyPatch(job, patch));
        }
      }),
      { numRuns: 60 },
    );
  });
});
