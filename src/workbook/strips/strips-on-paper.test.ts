import type { PDFDocumentProxy } from "pdfjs-dist/legacy/build/pdf.mjs";
import { describe, expect, test } from "vitest";
import { jobWith } from "../../../test/job-with.ts";
import { FONTS } from "../../../test/workbook/fonts.ts";
import {
  openPdf,
  type ReadPage,
  readPages,
  readStrokes,
  type Stroke,
} from "../../../test/workbook/read-pdf.ts";
import { wordBoxes } from "../../../test/workbook/word-boxes.ts";
import { X1_COLUMNS_IN, X1_ROWS_IN, x1Job } from "../../../test/workbook/x1-job.ts";
import { drawMarkingStrips } from "../../drawing/index.ts";
import type { Job } from "../../job/index.ts";
import { plan } from "../../plan/index.ts";
import { inches, lengthText, type UnitChoice, type UnitSystem } from "../../units/index.ts";
import { makeWorkbook, type PaperKind } from "../index.ts";
import { PT_PER_MM } from "../typeset/paper.ts";

/** Positions are measured on the page by a reader that knows nothing of how they were set. */
const TOLERANCE_MM = 0.02;
const UNITS: Record<UnitSystem, UnitChoice> = {
  imperial: { system: "imperial", ruler: "1/8 in" },
  metric: { system: "metric", ruler: "1 mm" },
};
const TILE_WIDTH_PT = 20.5 * PT_PER_MM;

interface Paper {
  pdf: PDFDocumentProxy;
  pages: ReadPage[];
  /** Index of each page that holds strips. */
  stripPages: number[];
}

function printed(paper: PaperKind, system: UnitSystem): Promise<Paper> {
  return printedOf(x1Job(system), paper);
}

async function printedOf(job: Job, paper: PaperKind): Promise<Paper> {
  const pdf = await openPdf(await makeWorkbook({ plan: plan(job), sets: ["strips"], paper, fonts: FONTS }));
  const pages = await readPages(pdf);
  const stripPages = pages.flatMap((page, i) =>
    page.runs.some((run) => /^[ABC]\d+$/.test(run.text) && run.sizePt > 12) ? [i] : [],
  );
  return { pdf, pages, stripPages };
}

interface Piece {
  key: string;
  marks: Stroke[];
  joins: Stroke[];
}

/** Lines across a strip, by the pen that drew them: marks 0.9 and 1.6 pt, joins 0.8 pt. */
async function pieces({ pdf, pages, stripPages }: Paper): Promise<Piece[]> {
  const found: Piece[] = [];
  for (const i of stripPages) {
    const strokes = await readStrokes(await pdf.getPage(i + 1));
    const keys = pages[i]?.runs.filter((run) => /^[ABC]\d+$/.test(run.text) && run.sizePt > 12) ?? [];
    for (const key of keys) {
      // Down to the key of the piece under it, where one stands there.
      const under = keys.filter((one) => Math.abs(one.x - key.x) < 0.1 && one.y > key.y).map(({ y }) => y);
      const across = strokes.filter(
        (one) =>
          one.height < 0.01 &&
          Math.abs(one.left - key.x) < 0.1 &&
          Math.abs(one.width - TILE_WIDTH_PT) < 0.1 &&
          one.top > key.y &&
          one.top < Math.min(...under, 1e4),
      );
      found.push({
        key: key.text,
        marks: across.filter((one) => one.penPt > 0.85),
        joins: across.filter((one) => Math.abs(one.penPt - 0.8) < 0.01).sort((a, b) => b.top - a.top),
      });
    }
  }
  return found;
}

/** Joins the pieces of a strip as a maker does, join on join from the start, and measures every mark from there. */
function joined(all: readonly Piece[], strip: string): number[] {
  const numberOf = ({ key }: Piece) => Number(key.slice(1));
  const own = all.filter((piece) => piece.key.startsWith(strip)).sort((a, b) => numberOf(a) - numberOf(b));
  const marks = new Set<number>();
  let lowestMm = 0;
  own.forEach(({ key, marks: lines, joins }, i) => {
    const start = i === 0 ? Math.max(...lines.map((line) => line.top)) : (joins[0]?.top ?? Number.NaN);
    const from = lowestMm;
    for (const line of lines) marks.add(Math.round((from + (start - line.top) / PT_PER_MM) * 200) / 200);
    const next = joins[i === 0 ? 0 : 1];
    if (i < own.length - 1) {
      expect(next, key).toBeDefined();
      lowestMm = from + (start - (next?.top ?? Number.NaN)) / PT_PER_MM;
    }
  });
  return [...marks].sort((a, b) => a - b);
}

function expectMarks(found: readonly number[], expected: readonly number[]) {
  for (const mm of expected) {
    expect(Math.min(...found.map((mark) => Math.abs(mark - mm))), `mark at ${mm}`).toBeLessThan(TOLERANCE_MM);
  }
  for (const mark of found) {
    expect(Math.min(...expected.map((mm) => Math.abs(mark - mm))), `stray ${mark}`).toBeLessThan(
      TOLERANCE_MM,
    );
  }
}

/** What a tape shows: the nearest eighth of an inch, or millimetre, mm. */
const onRuler: Record<UnitSystem, (lengthIn: number) => number> = {
  imperial: (lengthIn) => inches(Math.round(lengthIn * 8) / 8),
  metric: (lengthIn) => Math.round(inches(lengthIn)),
};

describe.each([
  ["letter", "imperial"],
  ["a4", "metric"],
] as const)("strips on %s, %s", (paper, system) => {
  test("joined, they have every row and column where run X1 has them, to the mark of the ruler", async () => {
    const all = await pieces(await printed(paper, system));
    expect(all.filter(({ key }) => key.startsWith("A")).length).toBeGreaterThan(5);
    expectMarks(joined(all, "A"), [0, ...X1_ROWS_IN, 60].map(onRuler[system]));
    expectMarks(joined(all, "B"), [0, ...X1_COLUMNS_IN, 36].map(onRuler[system]));
  });

  test("one square of 100 mm a print run, a bar of 100 mm and 4 in on each of its pages, and few pages", async () => {
    const { pdf, pages, stripPages } = await printed(paper, system);
    // 60, 36 and 35 3/4 in are 3,346 mm, and fourteen columns of a page hold no more than 14 × 230 mm.
    expect(stripPages.length).toBe(3);
    let squares = 0;
    for (let i = 0; i < pages.length; i++) {
      const strokes = await readStrokes(await pdf.getPage(i + 1));
      // 100 mm is 283.4646 pt, 4 in are 288 pt.
      const near = (value: number, wanted: number) => Math.abs(value - wanted) < 0.01;
      squares += strokes.filter((one) => near(one.width, 283.4646) && near(one.height, 283.4646)).length;
      if (!stripPages.includes(i)) continue;
      const upright = strokes.filter((one) => one.width < 0.01);
      expect(upright.filter((one) => near(one.height, 283.4646))).toHaveLength(1);
      expect(upright.filter((one) => near(one.height, 288))).toHaveLength(1);
    }
    expect(squares).toBe(1);
  });
});

test("they have the marks of the drawn strips", () => {
  const job = plan(x1Job());
  const [shade] = job.shades;
  if (shade === undefined) throw new Error("invalid job: no shade");
  const positions = drawMarkingStrips(job, shade).map((drawing) =>
    drawing.primitives.flatMap((one) =>
      one.kind === "polyline" && one.role === "markLine" ? one.points.map(([x]) => x) : [],
    ),
  );
  for (const [i, expected] of [X1_ROWS_IN, X1_COLUMNS_IN].entries()) {
    const drawn = positions[i] ?? [];
    expected.forEach((position) => {
      expect(Math.min(...drawn.map((x) => Math.abs(x - onRuler.imperial(position))))).toBeLessThan(0.001);
    });
  }
});

test.each([
  ["letter", "imperial"],
  ["a4", "metric"],
] as const)("every mark lies where its words say: %s, %s", async (paper, system) => {
  const made = await printed(paper, system);
  const [shade] = plan(x1Job(system)).shades;
  const words = made.pages.map(({ text }) => text).join(" ");
  for (const row of shade?.grid.rows ?? []) {
    const position = onRuler[system](row.fromHemMm / 25.4);
    expect(words).toContain(`Row ${row.number} ${lengthText(position, UNITS[system])}`.replace(/\s/g, " "));
  }
  // The ruler at the left edge says in what it counts.
  expect(words).toMatch(system === "imperial" ? /\d in\b/ : /\d cm\b/);
});

/** A board with spools, supports and a drive on it: its middle bears its name 1800 mm along, where two pieces meet. */
const TUBE_JOB = jobWith(
  {
    opening: { widthsMm: [1720], heightsMm: [1600] },
    shade: { style: "ribbed", mount: "outside", making: { lift: { kind: "tube-loop" } } },
  },
  { units: { system: "metric", ruler: "1 mm" } },
);

test.each([
  { what: "a cord lock, inches", paper: "letter", job: x1Job("imperial") },
  { what: "a cord lock, metric", paper: "letter", job: x1Job("metric") },
  { what: "a cord lock, metric", paper: "a4", job: x1Job("metric") },
  { what: "a tube, metric", paper: "a4", job: TUBE_JOB },
  { what: "a tube, metric", paper: "letter", job: TUBE_JOB },
] as const)(
  "$what, on $paper: no mark, no join and no sign of one strikes through a word or a figure of the ruler",
  async ({ job, paper }) => {
    const { pdf, pages, stripPages } = await printedOf(job, paper);
    expect(stripPages).not.toEqual([]);
    for (const i of stripPages) {
      const page = pages[i];
      if (page === undefined) throw new Error("no page");
      const strokes = await readStrokes(await pdf.getPage(i + 1));
      const lines = strokes.filter(
        ({ height, width }) => height < 0.01 && Math.abs(width - TILE_WIDTH_PT) < 0.1,
      );
      // Diamonds that two pieces are laid by.
      const signs = strokes.filter(
        ({ height, width }) => Math.abs(height - 10) < 0.1 && Math.abs(width - 10) < 0.1,
      );
      expect(signs).not.toEqual([]);
      const struck = wordBoxes(page).filter((box) =>
        [...lines, ...signs].some(
          ({ top, left, width, height }) =>
            top + height > box.top && top < box.bottom && left < box.right && box.left < left + width,
        ),
      );
      expect(struck.map(({ text }) => text)).toEqual([]);
    }
  },
);
