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
      opening: { widthsMm: [1100], heightsMm: [1500], sillAboveFloorMm: 800, recessDepthMm: 120 },
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

/** Sets that are built of text alone are printed on one paper: their words do not depend on it. */
const DRAWN: readonly PrintSet[] = PRINT_SETS.filter((set) => set !== "workings" && set !== "findings");

/** The last words over the foot of a page: where they have the size of a heading, it stands there alone. */
function lowest({ runs, heightPt }: ReadPage) {
  return runs
    .filter(({ y, text }) => y < heightPt - 50 && text.trim() !== "")
    .reduce<(typeof runs)[number] | undefined>(
      (low, run) => (low === undefined || run.y > low.y ? run : low),
      undefined,
    );
}

describe.each(STYLES)("%s", (style) => {
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
