import PDFDocument from "pdfkit";
import { readWorkbookFonts } from "../src/cli/workbook-fonts.ts";
import { plan } from "../src/plan/index.ts";
import { type PrintSet, writeWorkbook } from "../src/workbook/index.ts";
import { type Figure, median } from "./figure.ts";
import { jobOf } from "./many-windows.ts";

const WARM = 3;
const TIMES = 10;

async function medianMs(work: () => Promise<void>): Promise<number> {
  const samples: number[] = [];
  for (let n = -WARM; n < TIMES; n++) {
    const start = performance.now();
    await work();
    if (n >= 0) samples.push(performance.now() - start);
  }
  return median(samples);
}

const fonts = readWorkbookFonts();

/** Milliseconds and pages of a workbook of one shade, the machine warm. */
async function ofOne(sets: readonly PrintSet[]): Promise<{ ms: number; pages: number }> {
  const input = { plan: plan(jobOf(1)), sets, paper: "letter", fonts } as const;
  let pages = 0;
  const ms = await medianMs(() =>
    writeWorkbook(
      {
        ...input,
        onProgress: (progress) => {
          pages = progress.pages;
        },
      },
      async () => {},
    ),
  );
  return { ms, pages };
}

/** Lines on a bare page: those of a page of text at 10 pt. */
const LINES = 50;
const LINE =
  "Fold the bottom hem 1 1/2 in and again 1 1/2 in; press it, and pin it at every column of rings.";

/** As many pages of plain lines by the PDF library alone: no layout, no drawings, no tags. */
async function barePagesMs(pages: number): Promise<number> {
  return medianMs(
    () =>
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
      }),
  );
}

/** The sheets for the table, and all usual sheets by the page beside bare pages. */
export async function workbookOne(): Promise<Figure[]> {
  const table = await ofOne(["table"]);
  const usual = await ofOne(["table", "steps", "tag", "shopping"]);
  const bareMs = await barePagesMs(usual.pages);
  return [
    { name: "workbook.one", value: table.ms, unit: "ms", goal: 120, better: "lower" },
    {
      name: "workbook.pages-vs-pdfkit",
      value: bareMs / usual.ms,
      unit: "of the pages a second",
      goal: 0.5,
      better: "higher",
      peer: "pdfkit, plain lines",
      ratio: bareMs / usual.ms,
    },
  ];
}
