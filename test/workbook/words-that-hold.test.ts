import { describe, expect, test } from "vitest";
import { LIFT_KINDS, STYLES, type StyleKind } from "../../src/job/index.ts";
import { plan, planAndCut } from "../../src/plan/index.ts";
import { makeWorkbook, type PrintSet } from "../../src/workbook/index.ts";
import { jobWith } from "../job-with.ts";
import { FONTS } from "./fonts.ts";
import { openPdf, type ReadPage, readPages } from "./read-pdf.ts";

type Shade = NonNullable<Parameters<typeof jobWith>[0]["shade"]>;

function jobOf(shade: Shade, job: Parameters<typeof jobWith>[1] = {}, widthMm = 1500) {
  return jobWith(
    { opening: { widthsMm: [widthMm], heightsMm: [1500], sillAboveFloorMm: 800 }, shade },
    { place: "gb", purpose: "own-home", units: { system: "metric", ruler: "1 mm" }, ...job },
  );
}

async function printed(job: ReturnType<typeof jobOf>, sets: readonly PrintSet[]) {
  const pdf = await openPdf(await makeWorkbook({ ...planAndCut(job), sets, paper: "a4", fonts: FONTS }));
  return await readPages(pdf);
}

const words = ({ text }: ReadPage) => text.replace(/\s+/g, " ");

const firstShade = (job: ReturnType<typeof jobOf>) => {
  const [shade] = plan(job).shades;
  if (shade === undefined) throw new Error("invalid test job: no shade");
  return shade;
};

describe("what is printed holds for the shade", () => {
  test.each(LIFT_KINDS)("a label names a side only where a hand works there: %s", async (kind) => {
    const pages = await printed(jobOf({ mount: "outside", making: { lift: { kind } } }), ["label"]);
    const text = pages.map(words).join(" ");
    expect(text).toContain("outside the opening");
    expect(/Worked from the (?:left|right)/.test(text)).toBe(kind !== "spring" && kind !== "motor");
  });

  test.each(STYLES)("a spirit level lies on a straight hem alone: %s", (style) => {
    const shade = firstShade(jobOf({ style, mount: "outside" }, {}, 1000));
    const look = shade.steps.find(({ id }) => id === "level-look");
    const dips: Partial<Record<StyleKind, true>> = {
      relaxed: true,
      "pleated-balloon": true,
      "gathered-balloon": true,
      austrian: true,
      festoon: true,
    };
    expect(look?.text.includes("spirit level")).toBe(dips[style] === undefined);
    expect(look?.text).toContain("rom the sill to the hem");
  });

  test("pounds stand beside kilograms and newtons for a maker who reads inches", () => {
    const shade = { mount: "outside", making: { board: { substrate: "timber" } } } as const;
    const text = (system: "imperial" | "metric") =>
      firstShade(jobOf(shade, { units: { system, ruler: system === "metric" ? "1 mm" : "1/8 in" } }))
        .findings.map((one) => one.text)
        .join(" ")
        .replace(/\s/g, " ");
    // 12 kg / 0.45359237 = 26.5 lb and 70 N / 4.448222 = 15.7 lbf: NIST SP 811 (2008), appendix B.8.
    expect(text("imperial")).toMatch(/child of 26 lb \(12 kg\)/);
    expect(text("imperial")).toContain("15.7 lbf (70 N) at the cord");
    expect(text("imperial")).not.toContain("child of 12 kg");
    expect(text("metric")).toContain("child of 12 kg");
  });

  test("seams are measured on the cloth that they lie in", () => {
    const seams = (style: StyleKind) =>
      firstShade(jobOf({ style, mount: "outside" }, {}, 2400)).findings.find(({ id }) => id === "cloth.joins")
        ?.text;
    expect(seams("flat")).toMatch(/from the left edge, never/);
    expect(seams("tailed")).toMatch(/from the left edge of the flat cloth, never/);
  });
});
