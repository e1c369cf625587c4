import { describe, expect, test } from "vitest";
import { STYLES, type StyleKind } from "../../src/job/index.ts";
import { planAndCut } from "../../src/plan/index.ts";
import { makeWorkbook, PRINT_SETS, type PrintSet } from "../../src/workbook/index.ts";
import { jobWith } from "../job-with.ts";
import { FONTS } from "./fonts.ts";
import { openPdf, type ReadPage, readPages, readStrokes } from "./read-pdf.ts";
import { clipped, overprinted } from "./word-boxes.ts";

/** Nothing that is read stands nearer to an edge than this, pt: what home printers reach is 1/4 in, and a half has room to bind. */
const MARGIN_PT = 36;

function jobOf(style: StyleKind, system: "imperial" | "metric") {
  return jobWith(
    {
      id: "east",
      name: "East window",
      opening: {
        widthsMm: [1100],
        heightsMm: [1500],
        diagonalsMm: [1860, 1858],
        sillAboveFloorMm: 800,
        recessDepthMm: 120,
      },
      shade: { style, mount: "outside", making: { lift: { kind: "cord-lock" } } },
    },
    {
      name: "Ferry House",
      place: "gb",
      purpose: "own-home",
      units: { system, ruler: system === "imperial" ? "1/8 in" : "1 mm" },
    },
  );
}

const PAPERS = [
  ["letter", "imperial"],
  ["letter", "metric"],
  ["a4", "imperial"],
  ["a4", "metric"],
] as const;

/** Where drawings and full-size pieces meet the paper; sets of running text are printed on one paper alone. */
const DRAWN: readonly PrintSet[] = ["client", "handover", "table", "strips", "tag", "cutting"];

/** The last words over the foot of a page: where they have the size of a heading, it stands there alone. */
function lowest({ runs, heightPt }: ReadPage) {
  return runs
    .filter(({ y, text }) => y < heightPt - 50 && text.trim() !== "")
    .reduce<(typeof runs)[number] | undefined>(
      (low, run) => (low === undefined || run.y > low.y ? run : low),
      undefined,
    );
}

/** Lines over the foot of a page and under its head. */
function lineCount({ runs, heightPt }: ReadPage): number {
  const body = runs.filter(({ y, text }) => y > 75 && y < heightPt - 55 && text.trim() !== "");
  return new Set(body.map(({ y }) => Math.round(y / 4))).size;
}

describe.each(STYLES)("%s", (style) => {
  // A sheet with three lines of what is to be looked at is one that stays behind on the table.
  test.each(PAPERS)("on %s, %s: no table sheet holds a rest of the one before it", async (paper, system) => {
    const input = {
      ...planAndCut(jobOf(style, system), {}, 3),
      sets: ["table"] as const,
      paper,
      fonts: FONTS,
    };
    const pages = await readPages(await openPdf(await makeWorkbook(input)));
    const sheets = pages.filter(({ runs, heightPt }) =>
      runs.some((run) => run.text === "Table sheets" && run.y > heightPt - 50),
    );
    expect(sheets.length).toBeGreaterThan(5);
    expect(sheets.length).toBeLessThan(9);
    for (const sheet of sheets) {
      expect(lineCount(sheet), sheet.text.slice(0, 60)).toBeGreaterThan(6);
      // Each stands alone: it says at its head what it is.
      expect(Math.max(...sheet.runs.filter(({ y }) => y < 120).map(({ sizePt }) => sizePt))).toBeGreaterThan(
        17,
      );
    }
  });

  test.each(PAPERS)(
    "on %s, %s: no word lies on another, none leaves its page, no line does, no heading ends one",
    async (paper, system) => {
      const sets = paper === "letter" && system === "imperial" ? PRINT_SETS : DRAWN;
      const pdf = await openPdf(
        await makeWorkbook({ ...planAndCut(jobOf(style, system)), sets, paper, fonts: FONTS }),
      );
      const pages = await readPages(pdf);
      for (const [i, page] of pages.entries()) {
        const where = `page ${i + 1}, ${page.runs.find(({ y }) => y > page.heightPt - 50)?.text}`;
        expect(overprinted(page), where).toEqual([]);
        expect(clipped(page, MARGIN_PT), where).toEqual([]);
        expect(lowest(page)?.sizePt, where).not.toBeCloseTo(where.endsWith("Table sheets") ? 14 : 12, 1);
        // A template goes on over its neighbours: each page shows what of it lies there.
        if (/[A-Z]\d+ of \d+ × \d+/.test(page.text)) continue;
        for (const { left, top, width, height } of await readStrokes(await pdf.getPage(i + 1))) {
          expect(left, where).toBeGreaterThan(0);
          expect(top, where).toBeGreaterThan(0);
          expect(left + width, where).toBeLessThan(page.widthPt);
          expect(top + height, where).toBeLessThan(page.heightPt);
        }
      }
    },
  );
});
