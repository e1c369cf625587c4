import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { PLACES } from "../../src/job/index.ts";
import { plan } from "../../src/plan/index.ts";
import { makeWorkbook } from "../../src/workbook/index.ts";
import { FONTS } from "./fonts.ts";
import { type Dots, hasPoppler, rastered } from "./rastered.ts";
import { openPdf, readPages } from "./read-pdf.ts";
import { cordedJob } from "./stopped-job.ts";

const DPI = 600;
const MM_PER_DOT = 25.4 / DPI;
/** Heights of the letters of one line that stand apart, mm: ink from its top row to its bottom row. */
function letterHeights(
  { dark }: Dots,
  leftPt: number,
  rightPt: number,
  baselinePt: number,
  sizePt: number,
): number[] {
  const dots = (pt: number) => Math.round((pt / 72) * DPI);
  const [left, right] = [dots(leftPt), dots(rightPt)];
  const [top, bottom] = [dots(baselinePt - sizePt), dots(baselinePt + 0.25 * sizePt)];
  const heights: number[] = [];
  let ink: [number, number] | undefined;
  for (let x = left; x <= right; x++) {
    let high = Number.POSITIVE_INFINITY;
    let low = -1;
    for (let y = top; y <= bottom; y++) {
      if (!dark(x, y)) continue;
      high = Math.min(high, y);
      low = Math.max(low, y);
    }
    if (low >= 0) ink = ink === undefined ? [high, low] : [Math.min(ink[0], high), Math.max(ink[1], low)];
    else if (ink !== undefined) {
      heights.push((ink[1] - ink[0] + 1) * MM_PER_DOT);
      ink = undefined;
    }
  }
  return heights;
}

/** SOR/2019-97 s. 12: 5 mm and 2.5 mm; SLI 2010 No. 212: 5 mm and 1.5 mm; elsewhere the largest of those. */
const LEAST = { signalMm: 5, textMm: 2.5 };
const LEAST_OF: Partial<Record<(typeof PLACES)[number], typeof LEAST>> = { au: { signalMm: 5, textMm: 1.5 } };

test.skipIf(!hasPoppler).each(PLACES)("letters measured on the printed tag at 600 dpi: %s", async (place) => {
  const { signalMm, textMm } = LEAST_OF[place] ?? LEAST;
  const folder = mkdtempSync(join(tmpdir(), "tag-"));
  try {
    const planned = plan(cordedJob({ place, purpose: "for-sale" }));
    const bytes = await makeWorkbook({ plan: planned, sets: ["tag"], paper: "a4", fonts: FONTS });
    const file = join(folder, "tag.pdf");
    writeFileSync(file, bytes);
    const pages = await readPages(await openPdf(bytes));
    const lines = planned.shades[0]?.tag.lines ?? [];
    const found = { signal: [] as number[], text: [] as number[] };
    for (const [i, { runs }] of pages.entries()) {
      const dots = rastered(file, i + 1, DPI);
      for (const { text, x, y, width, sizePt: size } of runs) {
        const line = lines.find(
          (one) => one.text.includes(text.trim()) && size * (25.4 / 72) > one.minHeightMm * 1.4,
        );
        if (line === undefined || text.trim().length < 3) continue;
        const heights = letterHeights(dots, x, x + width, y, size);
        found[line.capitals ? "signal" : "text"].push(...heights);
      }
    }
    // Stops, commas, dashes and dots are lower than any letter is.
    const letters = (heights: number[], leastMm: number) => heights.filter((mm) => mm > 0.6 * leastMm);
    expect(letters(found.signal, signalMm).length).toBeGreaterThanOrEqual(7);
    expect(letters(found.text, textMm).length).toBeGreaterThan(60);
    expect(Math.min(...letters(found.signal, signalMm))).toBeGreaterThanOrEqual(signalMm - MM_PER_DOT);
    expect(Math.min(...letters(found.text, textMm))).toBeGreaterThanOrEqual(textMm - MM_PER_DOT);
  } finally {
    rmSync(folder, { recursive: true });
  }
});
