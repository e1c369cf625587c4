import type { PDFDocumentProxy } from "pdfjs-dist/legacy/build/pdf.mjs";
import { beforeAll, describe, expect, test } from "vitest";
import { FONTS } from "../../test/workbook/fonts.ts";
import { openPdf, type ReadPage, readPages } from "../../test/workbook/read-pdf.ts";
import { x1Job } from "../../test/workbook/x1-job.ts";
import { jobSchema } from "../job/index.ts";
import { plan } from "../plan/index.ts";
import { makeWorkbook } from "./make-workbook.ts";
import { PAPER_KINDS } from "./typeset/paper.ts";

const JOB = x1Job();

/** Pages from the one that opens a chapter to the one before the next: found by the words at their foot. */
function chapter(pages: readonly ReadPage[], title: string): string {
  return pages
    .filter(({ runs, heightPt }) => runs.some((run) => run.text === title && run.y > heightPt - 40))
    .map((page) => page.text)
    .join(" ");
}

/** `34 1⁄4` as a number of eighths. */
function eighths(text: string): number {
  const [, whole = "0", top = "0", bottom = "1"] =
    /^(?:(\d+)(?!⁄))? ?(?:(\d+)⁄(\d+))?$/.exec(text.trim()) ?? [];
  return Math.round((Number(whole) + Number(top) / Number(bottom)) * 8);
}

describe.each(PAPER_KINDS)("the workbook of one shade on %s", (paper) => {
  let pdf: PDFDocumentProxy;
  let pages: ReadPage[];

  beforeAll(async () => {
    const bytes = await makeWorkbook({
      plan: plan(JOB),
      paper,
      fonts: FONTS,
      createdOn: new Date(Date.UTC(2025, 2, 1)),
    });
    pdf = await openPdf(bytes);
    pages = await readPages(pdf);
  });

  test("is as large as the paper on every page", () => {
    // US Letter: 8 1/2 × 11 in, ANSI/ASME Y14.1. A4: 210 × 297 mm, ISO 216.
    const [width, height] = paper === "letter" ? [8.5 * 72, 11 * 72] : [(210 / 25.4) * 72, (297 / 25.4) * 72];
    for (const page of pages) {
      expect(page.widthPt).toBeCloseTo(width, 2);
      expect(page.heightPt).toBeCloseTo(height, 2);
    }
  });

  test("says job, shade and page n of m on every page", () => {
    expect(pages.length).toBeGreaterThan(20);
    pages.forEach(({ runs, heightPt }, i) => {
      const head = runs.filter((run) => run.y < 60).map((run) => run.text);
      expect(head).toEqual(expect.arrayContaining(["Ferry House", "Landing window"]));
      const foot = runs.filter((run) => run.y > heightPt - 40).map((run) => run.text);
      expect(foot).toContain(`page ${i + 1} of ${pages.length}`);
    });
  });

  test("has title, language, date and an outline that leads to its chapters", async () => {
    const { info } = (await pdf.getMetadata()) as unknown as {
      info: Record<string, unknown>;
    };
    expect(info.Title).toBe("Landing window, Ferry House: workbook");
    expect(info.Language).toBe("en");
    expect(info.CreationDate).toMatch(/^D:20250301/);
    expect(await pdf.getViewerPreferences()).toMatchObject({ DisplayDocTitle: true, PrintScaling: "None" });

    const [shade, ...others] = await pdf.getOutline();
    expect(others).toEqual([]);
    expect(shade?.title).toBe("Landing window");
    const titles = shade?.items.map((item: { title: string }) => item.title.replace(/^\d+\s+/, ""));
    expect(titles).toEqual([
      "Child safety",
      "Measure",
      "Cutting",
      "Marking plan",
      "Board",
      "Lock and threading",
      "Cords",
      "Pull and weight",
      "Step by step",
      "Hang and level",
      "Shopping and cost",
      "Findings",
      "Workings",
      "Child-safety tag, full size",
      "Marking strips, full size",
    ]);
    for (const item of shade?.items ?? []) {
      const [ref] = item.dest as [{ num: number; gen: number }];
      const index = await pdf.getPageIndex(ref);
      expect(pages[index]?.text).toContain(item.title.replace(/^\d+\s+/, ""));
    }
  });

  test("lists the page of each chapter, and the list leads there", async () => {
    const at = pages.findIndex((page) => page.text.includes("In this workbook"));
    const page = await pdf.getPage(at + 1);
    const links = (await page.getAnnotations()).filter((one) => one.subtype === "Link");
    expect(links).toHaveLength(15);
    for (const link of links) {
      const [ref] = (await pdf.getDestination(link.dest)) as [{ num: number; gen: number }];
      const index = await pdf.getPageIndex(ref);
      // The number stands at the left end of the place to press.
      const [left = 0, bottom = 0, , top = 0] = link.rect as number[];
      const words = pages[at]?.runs.filter((run) => {
        const y = (pages[at]?.heightPt ?? 0) - run.y;
        return run.x >= left - 0.1 && run.x < left + 250 && y > bottom && y < top;
      });
      expect(words?.[0]?.text).toBe(String(index + 1));
      expect(pages[index]?.text).toContain(words?.[1]?.text);
    }
  });

  // Trade notes, run X1: positions and lengths derived there by geometry, rounded to 1/8 in.
  test("marks the rows and columns of run X1", () => {
    const text = chapter(pages, "Marking plan");
    const rows = ["3 3⁄4", "11 3⁄8", "19", "26 5⁄8", "34 1⁄4", "41 3⁄4", "49 3⁄8"];
    rows.forEach((position, i) => {
      expect(text).toMatch(new RegExp(`Row ${i + 1} ${position} in `));
    });
    ["2", "10", "18", "26", "34"].forEach((position, i) => {
      expect(text).toMatch(new RegExp(`Column ${i + 1} ${position} in `));
    });
    expect(text).toContain("Top line 60 in");
  });

  test("cuts each cord as long as its parts add up to", () => {
    const text = chapter(pages, "Cords");
    const row =
      /(\d) [a-z ]+ ([\d⁄ ]+) in ([\d⁄ ]+) in ([\d⁄ ]+) in ([\d⁄ ]+) in ([\d⁄ ]+) in \d, (left|right)/g;
    const cords = [...text.matchAll(row)].map(([, , ...rest]) => rest.slice(0, 5).map(eighths));
    expect(cords).toHaveLength(5);
    for (const [rise = 0, run = 0, tail = 0, knots = 0, cut = 0] of cords) {
      // Run X1: 60 − 3.8 in from the bottom row to the top, 30 in of tail, 6 in for knots.
      expect([rise, tail, knots]).toEqual([56.25 * 8, 30 * 8, 6 * 8]);
      // Rise, run and sum are each rounded, the sum upwards: no more than a mark and a half apart.
      expect(Math.abs(cut - (rise + run + tail + knots))).toBeLessThanOrEqual(1.5);
    }
    // Columns stand 8 in apart, so cords from one side differ by 8 in.
    expect((cords[0]?.[4] ?? 0) - (cords[1]?.[4] ?? 0)).toBe(8 * 8);
  });

  test("says on its first sheet what cords do to children, where and for whom the shade is", () => {
    const first = pages[0]?.text ?? "";
    expect(first).toContain("Before you begin");
    expect(first).toContain("Cords and children");
    expect(first).toContain("strangle");
    expect(first).toContain("United Kingdom; for my own home.");
    expect(first).toContain("36 in × 60 in");
  });

  test("never says safe, compliant or approved", () => {
    for (const page of pages) expect(page.text).not.toMatch(/\b(safe|compliant|approved)\b/i);
  });

  test("embeds every typeface that it uses, and no other", async () => {
    const names = new Set<string>();
    for (let number = 1; number <= pages.length; number += 1) {
      const page = await pdf.getPage(number);
      await page.getOperatorList();
      const { items } = await page.getTextContent();
      for (const item of items) {
        if (!("fontName" in item)) continue;
        const font = page.commonObjs.get(item.fontName) as { name: string; missingFile?: boolean };
        expect(font.missingFile ?? false).toBe(false);
        names.add(font.name.replace(/^[A-Z]{6}\+/, ""));
      }
    }
    expect([...names].sort()).toEqual(["SourceSans3-Italic", "SourceSans3-Regular", "SourceSans3-SemiBold"]);
  });

  test("keeps all text inside the margins", () => {
    pages.forEach(({ runs, widthPt, heightPt }, i) => {
      for (const run of runs) {
        const right = run.upright ? run.x + run.width : run.x;
        expect(run.x, `page ${i + 1}: ${run.text}`).toBeGreaterThan(36);
        expect(right, `page ${i + 1}: ${run.text}`).toBeLessThan(widthPt - 36);
        expect(run.y, `page ${i + 1}: ${run.text}`).toBeGreaterThan(24);
        expect(run.y, `page ${i + 1}: ${run.text}`).toBeLessThan(heightPt - 24);
      }
    });
  });
});

test("the same plan gives the same bytes", async () => {
  const make = () => makeWorkbook({ plan: plan(JOB), paper: "a4", fonts: FONTS });
  expect(Buffer.from(await make()).equals(Buffer.from(await make()))).toBe(true);
});

test("without an italic the regular stands in", async () => {
  const { regular, semibold } = FONTS;
  const bytes = await makeWorkbook({ plan: plan(JOB), paper: "a4", fonts: { regular, semibold } });
  const pages = await readPages(await openPdf(bytes));
  expect(pages[0]?.text).toContain("Seen from the room");
});

describe("a job of several shades", () => {
  const [room] = JOB.rooms;
  const [window] = room?.windows ?? [];
  const job = jobSchema.parse({
    ...JOB,
    rooms: [
      { ...room, windows: ["one", "two", "three"].map((id) => ({ ...window, id, name: `Window ${id}` })) },
    ],
  });

  test("opens with the job: shades with their pages, shopping and cost of all", async () => {
    const pages = await readPages(
      await openPdf(await makeWorkbook({ plan: plan(job), paper: "letter", fonts: FONTS })),
    );
    const front = pages[0]?.runs ?? [];
    for (const name of ["one", "two", "three"]) {
      const y = front.find((run) => run.text === `Window ${name}`)?.y ?? 0;
      const row = front.filter((run) => Math.abs(run.y - y) < 2).sort((a, b) => a.x - b.x);
      expect(row.map((run) => run.text)).toEqual(expect.arrayContaining(["Upper landing", "36 in", "60 in"]));
      const cover = pages[Number(row.at(-1)?.text) - 1];
      expect(cover?.text).toContain("Workbook · flat shade");
      expect(cover?.text).toContain(`Window ${name}`);
    }
    // Its room to one scale, then what to buy.
    expect(pages[1]?.text).toContain("Seen from the room, to one scale. Lowered.");
    expect(pages[2]?.text).toContain("Shopping and cost of the whole job");
  });

  test("can be made for some of its shades", async () => {
    const bytes = await makeWorkbook({ plan: plan(job), shadeIds: ["two"], paper: "letter", fonts: FONTS });
    const pages = await readPages(await openPdf(bytes));
    expect(pages[0]?.text).toContain("Window two");
    for (const page of pages) expect(page.text).not.toContain("Window one");
    await expect(
      makeWorkbook({ plan: plan(job), shadeIds: ["nine"], paper: "letter", fonts: FONTS }),
    ).rejects.toThrow("invalid shadeIds: nine");
  });

  test("tells how far it is, and can be stopped between two chapters", async () => {
    const seen: number[] = [];
    const stop = new AbortController();
    const making = makeWorkbook({
      plan: plan(job),
      paper: "letter",
      fonts: FONTS,
      signal: stop.signal,
      onProgress: ({ done, total }) => {
        seen.push(done / total);
        if (seen.length === 5) stop.abort(new Error("enough"));
      },
    });
    await expect(making).rejects.toThrow("enough");
    expect(seen).toHaveLength(5);
    expect(seen.every((share, i) => share > (seen[i - 1] ?? 0) && share < 1)).toBe(true);
  });

  test("a job without windows still gives a page", async () => {
    const empty = plan(jobSchema.parse({ ...JOB, rooms: [] }));
    const pages = await readPages(
      await openPdf(await makeWorkbook({ plan: empty, paper: "a4", fonts: FONTS })),
    );
    expect(pages[0]?.text).toContain("Ferry House");
  });
});
