import type { PDFDocumentProxy } from "pdfjs-dist/legacy/build/pdf.mjs";
import { beforeAll, describe, expect, test } from "vitest";
import { jobWith } from "../../test/job-with.ts";
import { FONTS } from "../../test/workbook/fonts.ts";
import { openPdf, type ReadPage, readPages } from "../../test/workbook/read-pdf.ts";
import { x1Job } from "../../test/workbook/x1-job.ts";
import { type CuttingPlan, cuttingTicket, planAndCut } from "../plan/index.ts";
import { makeWorkbook } from "./make-workbook.ts";
import { PAPER_KINDS } from "./typeset/paper.ts";

/** Letters alone: a PDF breaks lines and spaces where it likes. */
const letters = (text: string) => text.replace(/[\s\u00a0]+/g, "");

describe.each(PAPER_KINDS)("the cutting pages on %s", (paper) => {
  const { plan, cutting } = planAndCut(x1Job());
  let pdf: PDFDocumentProxy;
  let pages: ReadPage[];

  beforeAll(async () => {
    pdf = await openPdf(await makeWorkbook({ plan, cutting, sets: ["cutting"], paper, fonts: FONTS }));
    pages = await readPages(pdf);
  });

  const planned = (): CuttingPlan => {
    if (cutting === undefined) throw new Error("no cutting plan");
    return cutting;
  };
  /** From the page that a title opens to the one before the next title. */
  const of = (title: string) => {
    const opens = ({ runs }: ReadPage) => runs.find(({ sizePt }) => Math.abs(sizePt - 21) < 0.1)?.text;
    const from = pages.findIndex((page) => opens(page) === title);
    const next = pages.findIndex((page, i) => i > from && opens(page) !== undefined);
    const own = from < 0 ? [] : pages.slice(from, next < 0 ? undefined : next);
    return letters(own.map((page) => page.text).join(" "));
  };

  test("every cloth has a chapter with a ticket: each cut in its order, what comes free, and its check sum", () => {
    for (const cloth of planned().cloths) {
      const words = of(`Cutting: ${cloth.clothName}`);
      expect(words).not.toBe("");
      if (!("bolts" in cloth.answer)) throw new Error(cloth.answer.status);
      for (const bolt of cloth.answer.bolts) {
        for (const { how, check } of cuttingTicket(cloth, bolt, planned().units)) {
          expect(words).toContain(letters(how));
          expect(words).toContain(letters(check));
        }
      }
    }
  });

  test("every length has its cuts", () => {
    const words = of("Cutting to length");
    for (const { name } of planned().lengths) expect(words).toContain(letters(name));
  });

  test("every piece has a label with its job, its room, its shade, its part and its size", () => {
    const words = of("Labels for the pieces");
    const pieces = planned().cloths.flatMap(({ problem }) => problem.pieces);
    expect(words.split("Upperlanding,FerryHouse")).toHaveLength(pieces.length + 1);
    for (const { problem } of planned().cloths) {
      for (const { shade, part } of problem.pieces) {
        expect(words).toContain(letters(shade));
        expect(words).toContain(letters(part).slice(0, 12));
      }
    }
  });

  test("they stand in the outline", async () => {
    const [set] = await pdf.getOutline();
    const titles = set?.items.map(({ title }: { title: string }) => title);
    expect(titles).toEqual(expect.arrayContaining(["Cutting to length", "Labels for the pieces"]));
  });
});

/** A lining, its board cover and two sleeves: eight cuts under a bolt whose usual drawing leaves room for six. */
test("a ticket that is a few cuts too long has its bolt drawn smaller, and ends on the same page", async () => {
  const job = jobWith(
    {
      opening: { widthsMm: [1080], heightsMm: [1100], recessDepthMm: 140, sillAboveFloorMm: 800 },
      shade: { style: "relaxed", making: { lift: { kind: "tube-wand", rearCords: "enclosed" } } },
    },
    { place: "gb", purpose: "for-sale", units: { system: "metric", ruler: "1 mm" } },
  );
  const { plan, cutting } = planAndCut(job);
  const pdf = await makeWorkbook({ plan, cutting, sets: ["cutting"], paper: "a4", fonts: FONTS });
  const pages = await readPages(await openPdf(pdf));
  const most = Math.max(
    ...(cutting?.cloths ?? []).flatMap((cloth) =>
      "bolts" in cloth.answer
        ? cloth.answer.bolts.map((bolt) => cuttingTicket(cloth, bolt, job.units).length)
        : [],
    ),
  );
  expect(most).toBe(8);
  const tickets = pages.filter(({ text }) => text.includes("Within"));
  expect(tickets).toHaveLength(cutting?.cloths.length ?? 0);
});

// A rod of 2 m holds two ribs of 85 to 90 cm, and a tube winds cords of one length: each kind is one line.
test("lengths and cuts that are alike are counted on one line, cords by their numbers too", async () => {
  const job = jobWith(
    { shade: { style: "ribbed", mount: "to-size", making: { lift: { kind: "spring" }, fold: { rows: 8 } } } },
    { units: { system: "metric", ruler: "1 mm" } },
  );
  const { plan, cutting } = planAndCut(job, {}, 3);
  const pdf = await makeWorkbook({ plan, cutting, sets: ["cutting"], paper: "a4", fonts: FONTS });
  const text = letters((await readPages(await openPdf(pdf))).map((page) => page.text).join(" "));
  const [shade] = plan.shades;
  if (shade === undefined) throw new Error("no shade");
  expect(shade.grid.rows).toHaveLength(8);
  expect(text).toMatch(/1to44×Newlength,2000mmeach2×8\d\dmm\(Window\)/u);
  const { cords } = shade.lift;
  const [cutMm, ...others] = new Set(cords.map((cord) => Math.round(cord.cutMm)));
  expect(others).toEqual([]);
  const n = cords.length;
  expect(text).toContain(letters(`Window, 1 to ${n} of ${n} ${n} × ${cutMm} mm`));
});
