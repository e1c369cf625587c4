import { expect, test } from "vitest";
import { planAndCut } from "../../src/plan/index.ts";
import { makeWorkbook, SET_PRESETS } from "../../src/workbook/index.ts";
import { jobWith } from "../job-with.ts";
import { FONTS } from "./fonts.ts";
import { openPdf, type ReadPage, readPages } from "./read-pdf.ts";

/** Lines over the foot of a page and under its head. */
function lineCount({ runs, heightPt }: ReadPage): number {
  const body = runs.filter(({ y, text }) => y > 75 && y < heightPt - 55 && text.trim() !== "");
  return new Set(body.map(({ y }) => Math.round(y / 4))).size;
}

/** One with little to mark on the flat cloth, and the two with most. */
test.each(["flat", "austrian", "pleated-balloon"] as const)(
  "%s: about eighteen pages, none for a last step or a sum alone; names in drawings at arm’s length are whole",
  async (style) => {
    const job = jobWith(
      {
        id: "east",
        name: "East window",
        opening: { widthsMm: [914.4], heightsMm: [1524], sillAboveFloorMm: 800 },
        shade: { style, mount: "outside", making: { lift: { kind: "cord-lock" } } },
      },
      { place: "us", purpose: "own-home", units: { system: "imperial", ruler: "1/8 in" } },
    );
    const input = {
      ...planAndCut(job, {}, 3),
      sets: SET_PRESETS.usual,
      paper: "letter",
      fonts: FONTS,
    } as const;
    const pages = await readPages(await openPdf(await makeWorkbook(input)));
    expect(pages.length).toBeLessThanOrEqual(20);
    const ofSet = (set: string) =>
      pages.filter(({ runs, heightPt }) => runs.some(({ text, y }) => text === set && y > heightPt - 50));
    for (const set of ["Step by step", "Shopping"]) {
      const last = ofSet(set).at(-1);
      expect(last === undefined ? 0 : lineCount(last), set).toBeGreaterThan(15);
    }
    // The job card is the first: its findings may be cut.
    const [, ...sheets] = ofSet("Table sheets");
    expect(sheets.length).toBeGreaterThan(4);
    for (const { runs } of sheets) {
      const words = runs.map(({ text }) => text);
      expect(words.filter((word) => word.endsWith("…"))).toEqual([]);
      // The section of the lock stands on the sheets for a desk.
      expect(words.filter((word) => /rollers apart|upside down|^gap |^bolt/.test(word))).toEqual([]);
    }
  },
);
