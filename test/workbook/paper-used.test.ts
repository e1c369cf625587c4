import { describe, expect, test } from "vitest";
import { planAndCut } from "../../src/plan/index.ts";
import { makeWorkbook, type PrintSet } from "../../src/workbook/index.ts";
import { jobWith } from "../job-with.ts";
import { FONTS } from "./fonts.ts";
import { openPdf, type ReadPage, readPages, readStrokes } from "./read-pdf.ts";

type Shade = NonNullable<Parameters<typeof jobWith>[0]["shade"]>;

function jobOf(shade: Shade, job: Parameters<typeof jobWith>[1] = {}, widthMm = 1500) {
  return jobWith(
    { opening: { widthsMm: [widthMm], heightsMm: [1500], sillAboveFloorMm: 800 }, shade },
    { place: "gb", purpose: "own-home", units: { system: "metric", ruler: "1 mm" }, ...job },
  );
}

async function printed(
  job: ReturnType<typeof jobOf>,
  sets: readonly PrintSet[],
  paper: "a4" | "letter" = "a4",
) {
  const pdf = await openPdf(await makeWorkbook({ ...planAndCut(job), sets, paper, fonts: FONTS }));
  return { pdf, pages: await readPages(pdf) };
}

const words = ({ text }: ReadPage) => text.replace(/\s+/g, " ");

describe("what is printed uses its paper", () => {
  test("three cloths over each other are drawn larger than their names", async () => {
    const cloth = { usableWidthMm: 1370, massGsm: 200, thicknessMm: 0.5 };
    const job = jobOf(
      { mount: "outside", face: "a", lining: "b", interlining: "c" },
      { cloths: ["a", "b", "c"].map((id) => ({ ...cloth, id, name: `Cloth ${id}` })) },
      900,
    );
    const { pdf, pages } = await printed(job, ["table"]);
    const cut = pages.findIndex((page) => words(page).includes("Cut sizes, hems and seams included"));
    const boxes = (await readStrokes(await pdf.getPage(cut + 1))).filter(
      ({ left, height }) => left < 200 && height > 10,
    );
    expect(Math.max(...boxes.map(({ height }) => height))).toBeGreaterThan(40);
  });

  test("pieces stand on the sheet with their cloths, however many lines their names take", async () => {
    const cloth = { usableWidthMm: 1370, massGsm: 200, thicknessMm: 0.5 };
    const repeat = { verticalMm: 641, horizontalMm: 685, match: "half-drop" as const };
    const job = jobOf(
      {
        mount: "outside",
        face: "a",
        lining: "b",
        banding: "c",
        making: { banding: { where: "sides-and-bottom", widthMm: 50 } },
      },
      {
        units: { system: "imperial", ruler: "1/8 in" },
        cloths: ["a", "b", "c"].map((id) => ({
          ...cloth,
          id,
          name: `Cloth ${id} of a long name`,
          ...(id === "a" ? { repeat } : {}),
        })),
      },
      900,
    );
    const { pages } = await printed(job, ["table"], "letter");
    const cut = pages.filter((page) =>
      /Cut sizes, hems and seams included|Banding, bottom/.test(words(page)),
    );
    expect(cut.length).toBe(1);
    expect(words(cut[0] as ReadPage)).toContain("Banding, bottom");
  });

  test("the lines of many pleats stand on the sheet with their drawing", async () => {
    const { pages } = await printed(jobOf({ style: "pleated-balloon", mount: "outside" }), ["table"]);
    const marked = pages.filter((page) => /Pleat \d|Mark the flat cloth/.test(words(page)));
    expect(marked.length).toBe(1);
  });

  test("low templates stand over each other, the first under the list", async () => {
    const { pages } = await printed(jobOf({ style: "tailed", mount: "outside" }, {}, 1000), ["strips"]);
    const tiled = pages.filter((page) => /A\d of 1 × 2/.test(words(page)));
    expect(tiled.length).toBe(1);
    expect(words(tiled[0] as ReadPage)).toContain("Templates, full size");
  });
});
