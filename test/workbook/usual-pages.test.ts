import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { openJobText } from "../../src/job/index.ts";
import { planAndCut } from "../../src/plan/index.ts";
import { makeWorkbook, SET_PRESETS } from "../../src/workbook/index.ts";
import { jobWith } from "../job-with.ts";
import { FONTS } from "./fonts.ts";
import { openPdf, type ReadPage, readPages } from "./read-pdf.ts";

/** Pages with the name of a set at their foot. */
function ofSet(pages: readonly ReadPage[], set: string): ReadPage[] {
  return pages.filter(({ runs, heightPt }) => runs.some(({ text, y }) => text === set && y > heightPt - 50));
}

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
    for (const set of ["Step by step", "Shopping"]) {
      const last = ofSet(pages, set).at(-1);
      expect(last === undefined ? 0 : lineCount(last), set).toBeGreaterThan(15);
    }
    // The job card is the first: its findings may be cut.
    const [, ...sheets] = ofSet(pages, "Table sheets");
    expect(sheets.length).toBeGreaterThan(4);
    for (const { runs } of sheets) {
      const words = runs.map(({ text }) => text);
      expect(words.filter((word) => word.endsWith("…"))).toEqual([]);
      // The section of the lock stands on the sheets for a desk.
      expect(words.filter((word) => /rollers apart|upside down|^gap |^bolt/.test(word))).toEqual([]);
    }
  },
);

test("the most steps to a shade of the demonstration, ribbed with six cords, stand on one sheet with most of their drawings", async () => {
  const opened = openJobText(readFileSync("examples/lantern-row.json", "utf8"));
  if (!opened.ok) throw new Error("the demonstration does not open");
  const planned = planAndCut(opened.job, { only: ["studio-north"] }, 3);
  const input = { ...planned, sets: ["table"], paper: "letter", fonts: FONTS } as const;
  const sheets = ofSet(await readPages(await openPdf(await makeWorkbook(input))), "Table sheets");
  const titles = ["Make", "Hang, level and dress"].map((title) =>
    sheets.findIndex(({ runs }) => runs.some(({ text }) => text === title)),
  );
  // Job card, cut, what is marked on the flat cloth and on the shade, rig; then these two, a page each.
  expect(titles).toEqual([5, 6]);
  expect(sheets).toHaveLength(7);
});

// A row of the list is a line of 12 pt with its rule: eight of them, and the lift under them, stand under the board.
test.each([
  ["a4", "metric", "cord-lock"],
  ["letter", "imperial", "cord-lock"],
  ["a4", "metric", "motor"],
] as const)(
  "on %s, %s: board, cords and lift of a shade with eight cords stand on one sheet, a line to a cord: %s",
  async (paper, system, kind) => {
    const job = jobWith(
      {
        opening: { widthsMm: [1850], heightsMm: [1650], sillAboveFloorMm: 800 },
        shade: { style: "pleated-balloon", mount: "outside", making: { lift: { kind } } },
      },
      { place: "gb", purpose: "for-sale", units: { system, ruler: system === "metric" ? "1 mm" : "1/8 in" } },
    );
    const planned = planAndCut(job, {}, 3);
    expect(planned.plan.shades[0]?.grid.columns).toHaveLength(8);
    const input = { ...planned, sets: ["table"], paper, fonts: FONTS } as const;
    const sheets = ofSet(await readPages(await openPdf(await makeWorkbook(input))), "Table sheets");
    const rig = sheets.find(({ text }) => /Board, (?:lock|tube)/.test(text));
    if (rig === undefined) throw new Error("no sheet for the board");
    expect(rig.text).toMatch(/Left end .*Screws: /s);
    const figures = rig.runs.filter(
      ({ text, sizePt, x }) => /^\d/.test(text.trim()) && sizePt > 13 && x > 300,
    );
    const heights = [...new Set(figures.map(({ y }) => Math.round(y)))].sort((a, b) => a - b);
    expect(heights.length).toBeGreaterThan(7);
    const steps = heights.slice(1).map((y, i) => y - (heights[i] ?? 0));
    expect(Math.max(...steps.slice(0, 7))).toBeLessThan(26);
  },
);
