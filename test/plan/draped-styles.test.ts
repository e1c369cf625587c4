import { immutableJSONPatch as applyPatch } from "immutable-json-patch";
import { describe, expect, test } from "vitest";
import { type JobInput, jobSchema, type Making } from "../../src/job/index.ts";
import { plan } from "../../src/plan/index.ts";
import { flatSize } from "../../src/shade-plan/index.ts";
import { inches } from "../../src/units/index.ts";
import { jobWith } from "../job-with.ts";
import { expectNear } from "../near.ts";

const STYLES = ["relaxed", "tailed", "pleated-balloon"] as const;
const MOUNTS = ["inside", "outside", "to-size"] as const;
const LAYERS = [
  {},
  { lining: null },
  { interlining: "domett" },
  { lining: null, blackout: "blackout-lining" },
] as const;
const MAKINGS: Making[] = [
  {},
  { pleat: { cut: "inserts", held: "pressed" }, relax: { lowerEdge: "straight" } },
  { pleat: { kind: "box", edges: "none" }, relax: { widening: "even" }, pouf: { marks: 0 } },
];

type ShadeInput = NonNullable<JobInput["rooms"][number]["windows"][number]["shade"]>;

function jobOf(shade: ShadeInput, widthMm = 1500, heightMm = 1700) {
  return jobWith({ opening: { widthsMm: [widthMm], heightsMm: [heightMm], sillAboveFloorMm: 800 }, shade });
}

function shadeOf(job: ReturnType<typeof jobOf>) {
  const [shade] = plan(job).shades;
  if (shade === undefined) throw new Error("no shade");
  return shade;
}

const CASES = STYLES.flatMap((style) =>
  MOUNTS.flatMap((mount) =>
    LAYERS.flatMap((layers) => MAKINGS.map((making) => ({ style, mount, making, ...layers }))),
  ),
);

describe("cloth of every style, mount and layer", () => {
  test("no cloth is made or lost from the finished size to the joined panels", () => {
    for (const asked of CASES) {
      const { cloth, size, form } = shadeOf(jobOf(asked));
      for (const cut of cloth.layers) {
        const flat = flatSize(size, form, cut.layer);
        const inSeams = form.allowances
          .filter((one) => one.inSeams === true && (one.layers ?? [cut.layer]).includes(cut.layer))
          .reduce((sum, { widthMm }) => sum + widthMm, 0);
        const [finished, ...added] = cut.makeUp;
        const beside = added
          .filter(({ label }) => !form.allowances.some((one) => one.label === label))
          .reduce((sum, { widthMm }) => sum + widthMm, 0);
        expectNear(finished?.widthMm ?? 0, size.finishedWidthMm, 1e-6, "finished width");
        expectNear(cut.cutWidthMm, flat.widthMm + inSeams + beside, 1e-6, `${asked.style} ${cut.layer}`);
        const sewn = 2 * inches(0.5) * (cut.panels.length - 1);
        const joined = cut.panels.reduce((sum, { widthMm }) => sum + widthMm, 0) - sewn;
        // The seams of a face cut apart are in its cut width already.
        const counted = cut.joinsAt === "cut-apart" ? inSeams : 0;
        if (cut.panels.every(({ lengthMm }) => Math.abs(lengthMm - cut.cutLengthMm) < 1e-6))
          expectNear(joined, cut.cutWidthMm - counted, 1e-6, "joined panels");
      }
    }
  });

  test("a cord for each column, a bar only where the form has one and never across a pleat", () => {
    for (const asked of CASES) {
      const { lift, grid, form, board } = shadeOf(jobOf(asked));
      expect(lift.cords).toHaveLength(grid.columns.length);
      expect(board.barLengthMm === undefined).toBe(form.bar === undefined);
      for (const { xMm } of form.pleats)
        if (form.bar !== undefined) expect(xMm <= form.bar.fromMm || xMm >= form.bar.toMm).toBe(true);
    }
  });

  test("every step is there once", () => {
    for (const asked of CASES) {
      const ids = shadeOf(jobOf(asked)).steps.map(({ id }) => id);
      expect(new Set(ids).size, ids.join(" ")).toBe(ids.length);
    }
  });
});

/** What is wrong, and the finding that each of its remedies is to take away. */
const WRONG: [string, ShadeInput, number?, number?][] = [
  ["shape.relaxed-too-wide", { style: "relaxed", mount: "to-size" }, 1500],
  ["shape.relaxed-ribs", { style: "relaxed", making: { ribs: { kind: "lining-pocket" } } }, 900],
  ["shape.relaxed-bar", { style: "relaxed", making: { relax: { weight: "bar" } } }, 900],
  ["shape.relaxed-columns", { style: "relaxed", making: { columns: { count: 5 } } }, 900],
  ["shape.relaxed-interlining", { style: "relaxed", interlining: "domett" }, 900],
  ["shape.relaxed-blackout", { style: "relaxed", blackout: "blackout-lining" }, 900],
  ["shape.relaxed-dip-too-deep", { style: "relaxed", making: { relax: { dipMm: 900 } } }, 900],
  ["shape.relaxed-dip-shallow", { style: "relaxed", making: { relax: { dipMm: 5 } } }, 900],
  [
    "shape.relaxed-dip-and-width",
    { style: "relaxed", making: { relax: { dipMm: 100, extraWidthMm: 3 } } },
    900,
  ],
  ["shape.pleat-inset-moved", { style: "tailed", making: { pleat: { insetMm: 900 } } }, 1200],
  ["shape.tailed-centre-droops", { style: "tailed", making: { pleat: { insetMm: 200 } } }, 1800],
  ["shape.pleats-too-wide", { style: "tailed", making: { pleat: { foldedMm: 900 } } }, 1200],
  ["shape.pleat-too-small", { style: "tailed", making: { pleat: { foldedMm: 20 } } }, 1200],
  ["shape.pleats-with-ribs", { style: "tailed", making: { ribs: { kind: "strip-pocket" } } }, 1200],
  ["shape.blackout-in-pleats", { style: "pleated-balloon", blackout: "blackout-lining" }],
  ["shape.interlining-in-pleats", { style: "pleated-balloon", interlining: "domett" }],
  ["shape.balloon-bar", { style: "pleated-balloon", making: { pleat: { bar: "between" } } }],
  ["shape.pouf-too-big", { style: "pleated-balloon", making: { pouf: { clothMm: 5000 } } }],
  ["shape.poufs-thin", { style: "pleated-balloon", making: { pleat: { held: "sewn", openAtHemMm: 10 } } }],
  ["shape.poufs-thin", { style: "pleated-balloon", making: { pleat: { edges: "none", foldedMm: 100 } } }],
  [
    "shape.inserts-take-more",
    { style: "tailed", making: { pleat: { cut: "inserts", foldedMm: 700, insetMm: 640 } } },
    2000,
  ],
];

describe("remedies", () => {
  test.each(WRONG)("%s is found, and each of its remedies cures it", (id, shade, width, height) => {
    const job = jobOf({ mount: "to-size", ...shade }, width, height);
    const found = shadeOf(job).findings.find((finding) => finding.id === id);
    expect(found, `${id} is not found`).toBeDefined();
    expect(found?.remedies.length).toBeGreaterThan(0);
    for (const { label, patch } of found?.remedies ?? []) {
      const cured = shadeOf(jobSchema.parse(applyPatch(JSON.parse(JSON.stringify(job)), patch as never)));
      expect(
        cured.findings.map((finding) => finding.id),
        label,
      ).not.toContain(id);
    }
  });
});
