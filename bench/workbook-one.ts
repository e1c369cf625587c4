import PDFDocument from "pdfkit";
import { readWorkbookFonts } from "../src/cli/workbook-fonts.ts";
import { plan } from "../src/plan/index.ts";
import { countPages, type PrintSet, writeWorkbook } from "../src/workbook/index.ts";
import { type Figure, least, ranWaiting } from "./figure.ts";
import { jobOf } from "./many-windows.ts";

const WARM = 3;
const TIMES = 20;

/** The least milliseconds of each, in turn: a slow moment of the machine falls on all of them. */
async function leastMs(works: readonly (() => Promise<void>)[]): Promise<number[]> {
  const samples = works.map((): number[] => []);
  for (let n = -WARM; n < TIMES; n++) {
    for (const [i, work] of works.entries()) {
      const ms = await ranWaiting(work);
      if (n >= 0) samples[i]?.push(ms);
    }
  }
  return samples.map(least);
}

const fonts = readWorkbookFonts();

const INPUT = { plan: plan(jobOf(1)), paper: "letter", fonts } as const;

/** Sets some sheets of a shade. */
function printed(sets: readonly PrintSet[]): () => Promise<void> {
  return () => writeWorkbook({ ...INPUT, sets }, async () => {});
}

async function pagesOf(sets: readonly PrintSet[]): Promise<number> {
  const counts = await countPages({ ...INPUT, sets });
  return Object.values(counts).reduce((sum, pages) => sum + pages, 0);
}

/** Lines on a bare page: those of a page of text at 10 pt. */
const LINES = 50;
const LINE =
  "Fold the bottom hem 1 1/2 in and again 1 1/2 in; press it, and pin it at every column of rings.";

/** As many pages of plain lines by the PDF library alone: no layout, no drawings, no tags. */
function barePages(pages: number): () => Promise<void> {
  return () =>
    new Promise((resolve) => {
      const doc = new PDFDocument({ autoFirstPage: false });
      doc.on("data", () => {});
      doc.on("end", resolve);
      doc.registerFont("regular", Buffer.from(fonts.regular));
      for (let page = 0; page < pages; page++) {
        doc.addPage().font("regular").fontSize(10);
        for (let line = 0; line < LINES; line++)
          doc.text(`${line} ${LINE}`, 50, 50 + 13 * line, { lineBreak: false });
      }
      doc.end();
    });
}

const USUAL = ["table", "steps", "tag", "shopping"] as const satisfies readonly PrintSet[];

/** The sheets for the table, and all usual sheets by the page beside bare pages. */
export async function workbookOne(): Promise<Figure[]> {
  const bare = barePages(await pagesOf(USUAL));
  const [tableMs = 0, usualMs = 0, bareMs = 0] = await leastMs([printed(["table"]), printed(USUAL), bare]);
  return [
    { name: "workbook.one", value: tableMs, unit: "ms", goal: 120, better: "lower" },
    {
      name: "workbook.pages-vs-pdfkit",
      value: bareMs / usualMs,
      unit: "of the pages a second",
      goal: 0.5,
      better: "higher",
      peer: "pdfkit, plain lines",
      ratio: bareMs / usualMs,
    },
  ];
}
