import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { plan } from "../../src/plan/index.ts";
import { makeWorkbook } from "../../src/workbook/index.ts";
import { jobWith } from "../job-with.ts";
import { FONTS } from "./fonts.ts";
import { type Dots, hasPoppler, rastered } from "./rastered.ts";
import { openPdf, type ReadPage, readPages } from "./read-pdf.ts";
import { x1Job } from "./x1-job.ts";

const DPI = 300;
const MM_PER_DOT = 25.4 / DPI;
const dots = (pt: number) => Math.round((pt / 72) * DPI);
/** Two dots: a line lies in one or the other, at both of its ends. */
const NEAR_MM = 2 * MM_PER_DOT;

/** Lengths of unbroken ink along a column (or row) of dots, from and to. */
function runsOf(length: number, isDark: (at: number) => boolean): [number, number][] {
  const runs: [number, number][] = [];
  let from = -1;
  for (let at = 0; at <= length; at++) {
    const dark = at < length && isDark(at);
    if (dark && from < 0) from = at;
    if (!dark && from >= 0) {
      runs.push([from, at - 1]);
      from = -1;
    }
  }
  return runs;
}

/** Middle to middle of the ends of the longest line of ink across a page, mm, by each row or column of dots. */
function linesOf(page: Dots, upright: boolean, leastMm: number): number[] {
  const [along, across] = upright ? [page.height, page.width] : [page.width, page.height];
  const lengths: number[] = [];
  for (let at = 0; at < across; at++) {
    for (const [from, to] of runsOf(along, (k) => (upright ? page.dark(at, k) : page.dark(k, at))))
      if ((to - from) * MM_PER_DOT > leastMm) lengths.push((to - from) * MM_PER_DOT);
  }
  return lengths;
}

async function printedPages(
  input: Parameters<typeof makeWorkbook>[0],
  look: (page: ReadPage, dots: () => Dots) => void,
): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), "strips-"));
  try {
    const bytes = await makeWorkbook(input);
    const file = join(folder, "strips.pdf");
    writeFileSync(file, bytes);
    for (const [i, page] of (await readPages(await openPdf(bytes))).entries())
      look(page, () => rastered(file, i + 1, DPI));
  } finally {
    rmSync(folder, { recursive: true });
  }
}

test.skipIf(!hasPoppler).each([
  ["letter", "imperial"],
  ["a4", "metric"],
] as const)(
  "printed at 300 dpi, square, bars and marks measure what they say: %s, %s",
  async (paper, system) => {
    let squares = 0;
    let bars = 0;
    let marks = 0;
    await printedPages(
      { plan: plan(x1Job(system)), sets: ["strips"], paper, fonts: FONTS },
      (page, raster) => {
        const keys = page.runs.filter(({ text, sizePt }) => /^[ABC]\d+$/.test(text) && sizePt > 12);
        const image = raster();
        if (page.text.includes("How to use them")) {
          // Sides of 100 mm, two each way, a pen’s width longer.
          for (const upright of [true, false]) {
            const sides = linesOf(image, upright, 95).filter((mm) => mm < 105);
            expect(sides.length).toBeGreaterThanOrEqual(2);
            for (const mm of sides) expect(Math.abs(mm - 100 - 0.28)).toBeLessThan(NEAR_MM);
          }
          squares++;
          return;
        }
        // The bar stands right of all strips: 100 mm and 4 in from end tick to end tick.
        const columns = linesOf(image, true, 95).filter((mm) => mm < 105);
        expect(columns.some((mm) => Math.abs(mm - 100) < 0.2 + NEAR_MM)).toBe(true);
        expect(columns.some((mm) => Math.abs(mm - 101.6) < 0.2 + NEAR_MM)).toBe(true);
        bars++;
        // From the hem (or left edge) of a first piece to each of its marks is what is printed beside the mark.
        for (const key of keys.filter(({ text }) => text.endsWith("1"))) {
          const left = dots(key.x) + 1;
          // Where neither words nor the ruler lie: a line across the whole strip is the only ink at both sides.
          const inked = (x: number) =>
            runsOf(image.height, (y) => y > dots(key.y) && y < dots(page.heightPt - 55) && image.dark(x, y));
          const right = inked(left + Math.round(19.5 / MM_PER_DOT));
          const start = right.at(-1);
          if (start === undefined) throw new Error("no start");
          const middle = ([from, to]: [number, number]) => (from + to) / 2;
          const heights = right.map((run) => (middle(start) - middle(run)) * MM_PER_DOT);
          const said = page.runs.filter(
            ({ text, x, y }) =>
              /^(?:\d+ )?(?:\d+⁄\d+|\d+|\d+,?\d*) (?:in|cm|mm)$/.test(text.trim()) &&
              x > key.x &&
              x < key.x + 58 &&
              y > key.y,
          );
          for (const { text, sizePt } of said) {
            if (sizePt < 7) continue;
            const mm = mmOf(text.trim());
            expect(
              Math.min(...heights.map((height) => Math.abs(height - mm))),
              `${key.text}: ${text}`,
            ).toBeLessThan(NEAR_MM);
            marks++;
          }
        }
      },
    );
    expect(squares).toBe(1);
    expect(bars).toBe(3);
    expect(marks).toBeGreaterThan(4);
  },
);

/** A length as printed, mm: `7 3⁄5 in`, `193 mm`. */
function mmOf(text: string): number {
  const [, whole = "0", over, under, unit] =
    /^(?:(\d+)(?: |$))?(?:(\d+)⁄(\d+) )?(in|cm|mm)?$/.exec(text) ?? [];
  const value = Number(whole) + (over === undefined ? 0 : Number(over) / Number(under));
  return value * (unit === "in" ? 25.4 : unit === "cm" ? 10 : 1);
}

test.skipIf(!hasPoppler)(
  "printed at 300 dpi, every page of a template has a bar that measures what it says",
  async () => {
    const job = jobWith({ shade: { style: "relaxed" } }, { units: { system: "metric", ruler: "1 mm" } });
    let pages = 0;
    await printedPages({ plan: plan(job), sets: ["strips"], paper: "a4", fonts: FONTS }, (page, raster) => {
      if (!/[A-Z]\d+ of \d+ × \d+/.test(page.text)) return;
      const rows = linesOf(raster(), false, 95).filter((mm) => mm < 105);
      expect(rows.some((mm) => Math.abs(mm - 100) < 0.2 + NEAR_MM)).toBe(true);
      expect(rows.some((mm) => Math.abs(mm - 101.6) < 0.2 + NEAR_MM)).toBe(true);
      pages++;
    });
    expect(pages).toBeGreaterThan(1);
  },
);
