import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { type Job, type JobInput, LIFT_KINDS, openJobText } from "../../src/job/index.ts";
import { planAndCut } from "../../src/plan/index.ts";
import { makeWorkbook, SET_PRESETS } from "../../src/workbook/index.ts";
import { jobWith } from "../job-with.ts";
import { FONTS } from "./fonts.ts";
import { openPdf, type ReadPage, readPages, readStrokes } from "./read-pdf.ts";

type JobLift = NonNullable<NonNullable<JobInput["workshop"]>["lift"]>;

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

/** A wide shade with so many cords; a mount that is not said is outside. */
function wideJob(widthMm: number, system: "imperial" | "metric", lift: JobLift) {
  return jobWith(
    {
      opening: { widthsMm: [widthMm], heightsMm: [1650], sillAboveFloorMm: 800 },
      shade: { style: "pleated-balloon", mount: "outside", making: { lift } },
    },
    { place: "gb", purpose: "for-sale", units: { system, ruler: system === "metric" ? "1 mm" : "1/8 in" } },
  );
}

async function tableSheets(job: Job, paper: "a4" | "letter") {
  const planned = planAndCut(job, {}, 3);
  const pdf = await openPdf(await makeWorkbook({ ...planned, sets: ["table"], paper, fonts: FONTS }));
  const pages = await readPages(pdf);
  const [shade] = planned.plan.shades;
  if (shade === undefined) throw new Error("no shade");
  return { pdf, pages, sheets: ofSet(pages, "Table sheets"), shade };
}

/** A place on the board and a cord to a line, each with a figure of 15 pt. */
const FIGURE_PT = 13;

// A row of the list is a line of 12 pt with its rule: eight of them, and the lift under them, stand under the board.
test.each(
  LIFT_KINDS.flatMap((kind) => [["a4", "metric", kind] as const, ["letter", "imperial", kind] as const]),
)(
  "on %s, %s: board, cords and lift of a shade with eight cords stand on one sheet, a line to a cord: %s",
  async (paper, system, kind) => {
    const { sheets, shade } = await tableSheets(wideJob(1850, system, { kind }), paper);
    expect(shade.grid.columns).toHaveLength(8);
    const rig = sheets.find(({ text }) => /Board, (?:lock|tube|last eye)/.test(text));
    if (rig === undefined) throw new Error("no sheet for the board");
    expect(rig.text).toMatch(/Left end .*Screws: /s);
    const figures = rig.runs.filter(
      ({ text, sizePt, x }) => /^\d/.test(text.trim()) && sizePt > FIGURE_PT && x > 300,
    );
    const heights = [...new Set(figures.map(({ y }) => Math.round(y)))].sort((a, b) => a - b);
    expect(heights.length).toBeGreaterThan(7);
    const steps = heights.slice(1).map((y, i) => y - (heights[i] ?? 0));
    expect(Math.max(...steps.slice(0, 7))).toBeLessThan(26);
  },
);

test.each([
  ["a4", "metric", "motor"],
  ["letter", "imperial", "cord-lock"],
] as const)(
  "on %s, %s: of twelve cords the lift has a sheet of its own, with every cord and note: %s",
  async (paper, system, kind) => {
    const { sheets, shade } = await tableSheets(wideJob(3300, system, { kind }), paper);
    expect(shade.grid.columns).toHaveLength(12);
    const at = sheets.findIndex(({ text }) => text.includes("From the board’s left end"));
    const [board, lift] = sheets.slice(at, at + 2);
    expect(board?.text).toContain("and on to its right end");
    expect(lift?.text).toMatch(/(?:Lock and threading|Tube and cords) .*Left end .*Screws: .*Cut /s);
    expect(sheets[at + 2]?.runs.some(({ text, sizePt }) => text === "Make" && sizePt > 17)).toBe(true);
  },
);

/**
 * What two cords, drawn 0.8 mm wide, keep of white between them at the least, and a wheel of 9 mm and a number have on
 * paper: our own minimum, so that one is told from the other at arm’s length.
 */
const LEAST_WHITE_MM = 0.3;
const CORD_LINE_MM = 0.8;
const LEAST_WHEEL_MM = 6;
const LEAST_NUMBER_PT = 9;
const MM_PER_PT = 25.4 / 72;

test.each([
  [900, "letter", "cord-1-4"],
  [1600, "a4", "cord-1-4"],
  [1600, "letter", "cord-1-4"],
  [1850, "a4", "cord-1-4"],
  [1850, "letter", "cord-1-4"],
  [1850, "letter", "cord-0-9"],
  [3300, "a4", "cord-1-4"],
] as const)(
  "a shade %d mm wide on %s with %s: each cord, wheel and number in the drawing of its lock is readable",
  async (widthMm, paper, cord) => {
    const job = wideJob(widthMm, "metric", { kind: "cord-lock", cord });
    const { pdf, pages, shade } = await tableSheets(job, paper);
    const { lift } = shade;
    if (lift.kind !== "cord-lock") throw new Error("invalid test: no lock");
    const scales = await Promise.all(
      pages.map(async (_page, i) => {
        const all = await readStrokes(await pdf.getPage(i + 1));
        // Its housing, told by its proportions from all other boxes of the sheet, and by the pen of a housing.
        const housings = all.filter(
          ({ width, height }) =>
            height > 1 && Math.abs(width / height - lift.housingLengthMm / lift.housingWidthMm) < 1e-3,
        );
        return {
          i,
          scale: Math.max(0, ...housings.map(({ width }) => (width * MM_PER_PT) / lift.housingLengthMm)),
        };
      }),
    );
    const { i, scale } = scales.reduce((most, one) => (one.scale > most.scale ? one : most));
    const zs = lift.cords.map(({ path }) => path.at(-1)?.zMm ?? 0).sort((a, b) => a - b);
    const apartMm = Math.min(...zs.slice(1).map((z, k) => z - (zs[k] ?? 0)));
    expect(scale * apartMm).toBeGreaterThan(CORD_LINE_MM + LEAST_WHITE_MM - 1e-6);
    expect(scale * lift.entry.rollerMm).toBeGreaterThan(LEAST_WHEEL_MM);
    const numbers = (pages[i]?.runs ?? []).filter(({ text }) => /^\d+$/.test(text));
    for (const { number } of lift.cords) {
      // Once beside its cord in the list, once at its eye or on the lock, each large enough.
      const found = numbers.filter(({ text }) => text === String(number));
      expect(found.length, `cord ${number}`).toBeGreaterThan(1);
      for (const { sizePt } of found) expect(sizePt, `cord ${number}`).toBeGreaterThan(LEAST_NUMBER_PT);
    }
  },
);
