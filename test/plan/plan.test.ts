import fc from "fast-check";
import { immutableJSONPatch as applyPatch } from "immutable-json-patch";
import { describe, expect, it } from "vitest";
import type { Remedy } from "../../src/figures/index.ts";
import { type Job, jobSchema } from "../../src/job/index.ts";
import { isWithinFields, plan, type ShadePlan } from "../../src/plan/index.ts";
import { cite } from "../../src/sources/index.ts";
import { inches, lengthText, MM_PER_YARD, markMm, nearestMark } from "../../src/units/index.ts";
import { anyJob } from "../arbitrary-job.ts";
import { jobWith } from "../job-with.ts";
import { expectNear } from "../near.ts";
import { pinned } from "../pinned.ts";

function onlyShade(job: Job): ShadePlan {
  const shade = plan(job).shades[0];
  if (shade === undefined) throw new Error("invalid test job: no shade");
  return shade;
}

/** Every number and text of a value, with its path: what a reader of plan.json would find. */
function* leaves(value: unknown, path = "plan"): Generator<[path: string, leaf: unknown]> {
  if (typeof value === "object" && value !== null) {
    for (const [key, inner] of Object.entries(value)) yield* leaves(inner, `${path}.${key}`);
  } else yield [path, value];
}

/** The job as a screen would change it; a patch that does not apply is named. */
function patchedBy(job: Job, remedy: Remedy, id: string): unknown {
  try {
    return applyPatch(JSON.parse(JSON.stringify(job)), remedy.patch as never);
  } catch (error) {
    throw new Error(`${id} “${remedy.label}” ${JSON.stringify(remedy.patch)}: ${String(error)}`);
  }
}

describe("derived run X1 (geometry check, not published)", () => {
  const shade = onlyShade(
    jobWith({
      opening: { widthsMm: [inches(36)], heightsMm: [inches(60)] },
      shade: {
        mount: "to-size",
        making: {
          fold: { headrailMm: inches(3) },
          hems: { boardAllowanceMm: inches(3.5) },
          lift: { tailMm: inches(30), knotsMm: inches(6) },
        },
      },
    }),
  );

  it("folds: 7 rows, 7.6 in apart, the first at 3.8 in, raised 6.8 in", () => {
    const expected = [3.8, 11.4, 19, 26.6, 34.2, 41.8, 49.4];
    expect(shade.grid.rows).toHaveLength(expected.length);
    shade.grid.rows.forEach((row, i) => {
      expectNear(row.fromHemMm, inches(expected[i] ?? 0), 1e-6, `row ${row.number}`);
    });
    expectNear(shade.grid.topSectionMm, inches(10.6), 1e-6, "top section");
    expectNear(shade.grid.raisedHeightMm, inches(6.8), 1e-6, "raised height");
    expectNear(shade.grid.travelMm, inches(53.2), 1e-6, "travel");
  });

  it("columns at 2, 10, 18, 26 and 34 in: 35 rings and 5 eyes", () => {
    shade.grid.columns.forEach((column, i) => {
      expectNear(column.xMm, inches(2 + 8 * i), 1e-6, `column ${column.number}`);
    });
    expect(shade.grid.rows.length * shade.grid.columns.length).toBe(35);
    expect(shade.lift.eyes).toHaveLength(5);
  });

  it("cloth: cut 42 × 66.5 in, one width, 1.85 yd", () => {
    const face = shade.cloth.layers.find((cut) => cut.layer === "face");
    expectNear(face?.cutWidthMm ?? 0, inches(42), 1e-6);
    expectNear(face?.cutLengthMm ?? 0, inches(66.5), 1e-6);
    expect(face?.widths).toBe(1);
    expectNear((face?.lengthMm ?? 0) / MM_PER_YARD, 1.85, 0.005, "yards");
  });

  it("five cords of 1.4 mm in the smallest lock that takes them", () => {
    const { lift } = shade;
    if (lift.kind !== "cord-lock") throw new Error("invalid X1: no lock");
    expect(lift.lockId).toBe("lock-4-slot");
    expect(lift.cords).toHaveLength(5);
    expectNear(lift.tailRaisedMm - lift.tailLoweredMm, shade.grid.travelMm, 1e-6, "tail grows by the travel");
  });
});

describe("any valid job", () => {
  it("is planned without NaN, infinity or a negative size", () => {
    fc.assert(
      fc.property(anyJob, (job) => {
        for (const [path, leaf] of leaves(plan(job))) {
          if (typeof leaf === "number" && !Number.isFinite(leaf)) throw new Error(`${path} is ${leaf}`);
          if (typeof leaf === "string" && /NaN|undefined|Infinity/.test(leaf))
            throw new Error(`${path}: ${leaf}`);
          const isSize =
            /(Width|Length|Height|Depth|Thickness|run|rise|cut|buy|total|travel|mass)\w*(Mm|Kg)$/i.test(path);
          // What a cut size is made up of may take off as well as add.
          const isPart = path.includes(".makeUp.");
          if (typeof leaf === "number" && isSize && !isPart && leaf < 0)
            throw new Error(`${path} is ${leaf}`);
        }
      }),
      { numRuns: 300 },
    );
  });

  it("has rows and sections that add up to the finished length", () => {
    fc.assert(
      fc.property(anyJob, (job) =>
        plan(job).shades.every(({ grid, size }) => {
          const sum =
            grid.bottomSectionMm + grid.spacingsMm.reduce((total, s) => total + s, 0) + grid.topSectionMm;
          return Math.abs(sum - size.finishedLengthMm) < 1e-6;
        }),
      ),
      { numRuns: 200 },
    );
  });

  it("rounds every row on its own: never off by more than half a mark", () => {
    fc.assert(
      fc.property(anyJob, (job) =>
        plan(job).shades.every(({ grid }) =>
          grid.rows.every(({ fromHemMm }) => {
            const printed = nearestMark(fromHemMm, job.units.ruler) * markMm(job.units.ruler);
            return Math.abs(printed - fromHemMm) <= markMm(job.units.ruler) / 2 + 1e-9;
          }),
        ),
      ),
      { numRuns: 100 },
    );
  });

  it("is planned alike every time", () => {
    fc.assert(
      fc.property(anyJob, (job) => {
        expect(plan(job)).toEqual(plan(job));
      }),
      { numRuns: 30 },
    );
  });

  it("has remedies that apply to the job, and leave it valid where its fields take them", () => {
    fc.assert(
      fc.property(anyJob, (job) => {
        const planned = plan(job);
        const findings = [...planned.findings, ...planned.shades.flatMap((shade) => shade.findings)];
        for (const { id, remedies } of findings) {
          for (const remedy of remedies) {
            const isValid = jobSchema.safeParse(patchedBy(job, remedy, id)).success;
            expect(isWithinFields(remedy), `${id} “${remedy.label}”`).toBe(isValid);
          }
        }
      }),
      {
        numRuns: 40,
        examples: pinned(
          import.meta.url,
          "any valid job > has remedies that apply to the job, and leave it valid where its fields take them",
        ),
      },
    );
  });
});

describe("findings", () => {
  const found = (window: Parameters<typeof jobWith>[0]) => {
    const job = jobWith(window);
    const shade = onlyShade(job);
    return { job, shade, ids: shade.findings.map((finding) => finding.id) };
  };
  const applied = (job: Job, shade: ShadePlan, id: string, remedy = 0) => {
    const patch = shade.findings.find((finding) => finding.id === id)?.remedies[remedy]?.patch;
    if (patch === undefined) throw new Error(`no remedy for ${id}`);
    return onlyShade(jobSchema.parse(applyPatch(JSON.parse(JSON.stringify(job)), patch as never)));
  };

  it("a stack limit that rows can meet is met without a word", () => {
    const { shade, ids } = found({
      opening: { widthsMm: [900], heightsMm: [1800] },
      shade: { mount: "to-size", making: { fold: { stackMm: 160 } } },
    });
    expect(ids).not.toContain("shape.stack-over-limit");
    expect(shade.grid.raisedHeightMm).toBeLessThanOrEqual(160);
  });

  it("an impossible stack limit gives the nearest and a remedy that holds", () => {
    const { job, shade, ids } = found({
      opening: { widthsMm: [900], heightsMm: [1800] },
      shade: { mount: "to-size", making: { fold: { stackMm: 80 } } },
    });
    expect(ids).toContain("shape.stack-over-limit");
    const last = (shade.findings.find((f) => f.id === "shape.stack-over-limit")?.remedies.length ?? 1) - 1;
    const after = applied(job, shade, "shape.stack-over-limit", last);
    expect(after.findings.map((finding) => finding.id)).not.toContain("shape.stack-over-limit");
  });

  it("too few rows name the count that keeps the spacing, and the remedy sets it", () => {
    const { job, shade, ids } = found({ shade: { making: { fold: { rows: 2 } } } });
    expect(ids).toContain("shape.rows-too-few");
    const after = applied(job, shade, "shape.rows-too-few");
    expect(after.findings.map((finding) => finding.id)).not.toContain("shape.rows-too-few");
  });

  it("the rule without headrail says what a real board needs", () => {
    const { job, shade, ids } = found({ shade: { making: { fold: { rule: "no-headrail" } } } });
    expect(ids).toContain("shape.headrail-short");
    const after = applied(job, shade, "shape.headrail-short");
    expect(after.findings.map((finding) => finding.id)).not.toContain("shape.headrail-short");
  });

  it("says every length in the maker’s units", () => {
    const { shade } = found({ shade: { making: { fold: { rows: 2 } } } });
    const text = shade.findings.find((finding) => finding.id === "shape.rows-too-few")?.text ?? "";
    expect(text).toContain(lengthText(inches(8), { system: "imperial", ruler: "1/8 in" }));
  });
});

describe("mass", () => {
  it("a bar weighs what its section and the handbook density give", () => {
    // EN 1991-1-1:2002, table A.4: steel 77.0 to 78.5 kN/m³ (clause from memory), so 7 850 kg/m³.
    const shade = onlyShade(
      jobWith({ opening: { widthsMm: [inches(36)], heightsMm: [inches(60)] }, shade: { mount: "to-size" } }),
    );
    const bar = shade.mass.parts.find((part) => part.part === "bar");
    const lengthM = (inches(36) - inches(0.5)) / 1000;
    expectNear(bar?.massKg ?? 0, lengthM * 0.019 * 0.003 * 7850, 1e-9);
    expect(cite("steel-density").source).toBe("steel-density");
  });
});
