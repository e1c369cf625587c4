import type { PDFDocumentProxy } from "pdfjs-dist/legacy/build/pdf.mjs";
import { beforeAll, describe, expect, test } from "vitest";
import { FONTS } from "../../test/workbook/fonts.ts";
import { openPdf, type ReadPage, readPages } from "../../test/workbook/read-pdf.ts";
import { x1Job } from "../../test/workbook/x1-job.ts";
import { jobSchema, PLACE_NAMES } from "../job/index.ts";
import { plan, planAndCut } from "../plan/index.ts";
import { lengthText } from "../units/index.ts";
import { makeWorkbook } from "./make-workbook.ts";
import { PRINT_SETS, SET_PRESETS, SET_WORDS } from "./print-sets/index.ts";
import { SHEAF_WORDS } from "./sheaves.ts";
import { PAPER_KINDS } from "./typeset/paper.ts";

const JOB = x1Job();

/** Pages of a set, found by the words at their foot. */
function setPages(pages: readonly ReadPage[], title: string): string {
  return pages
    .filter(({ runs, heightPt }) => runs.some((run) => run.text === title && run.y > heightPt - 50))
    .map((page) => page.text)
    .join(" ");
}

/** Runs of a line as a reader takes them, every gap one space. */
function wholeText(runs: readonly string[]): string {
  return runs.join(" ").replace(/\s+/g, " ");
}

const plainText = (text: string) => text.replaceAll("\u00a0", " ");

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
      ...planAndCut(JOB),
      sets: PRINT_SETS,
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

  test("says job, shade, set, for whom and page n of m on every page", () => {
    const words = ({ runs, heightPt }: ReadPage) => ({
      head: runs.filter((run) => run.y < 60 && run.text.trim() !== "").map((run) => run.text),
      foot: runs.filter((run) => run.y > heightPt - 50).map((run) => run.text),
    });
    const names = [...Object.values(SET_WORDS), SHEAF_WORDS.job].map(({ name }) => name);
    const sheaves = new Map<string, string[][]>();
    for (const { head, foot } of pages.map(words)) {
      const [set = "", reader = ""] = foot;
      expect(names).toContain(set);
      expect(reader).not.toBe("");
      expect([["Ferry House"], ["Ferry House", "Upper landing · Landing window"]]).toContainEqual(head);
      const sheaf = [...head, set].join(", ");
      sheaves.set(sheaf, [...(sheaves.get(sheaf) ?? []), foot]);
    }
    // Quote, order, invoice, labels, the job, shopping, cutting and parts; nine sets of the shade.
    expect(sheaves.size).toBe(17);
    for (const feet of sheaves.values()) {
      feet.forEach((foot, i) => {
        expect(foot).toContain(`page ${i + 1} of ${feet.length}`);
      });
    }
  });

  test("has title, language, date and an outline that leads to its sets", async () => {
    const { info } = (await pdf.getMetadata()) as unknown as {
      info: Record<string, unknown>;
    };
    expect(info.Title).toBe("Landing window, Ferry House: workbook");
    expect(info.Language).toBe("en-GB");
    expect(info.CreationDate).toMatch(/^D:20250301/);
    expect(await pdf.getViewerPreferences()).toMatchObject({ DisplayDocTitle: true, PrintScaling: "None" });

    const outline = await pdf.getOutline();
    expect(outline.map(({ title }: { title: string }) => title)).toEqual([
      "Client sheets",
      "Order",
      "Invoice",
      "Labels",
      "The job",
      "Landing window",
      "Shopping",
      "Cutting tickets",
      "Parts in your hand",
    ]);
    const sets = outline[5]?.items ?? [];
    expect(sets.map(({ title }: { title: string }) => title)).toEqual([
      "Client sheets",
      "Hand-over sheet",
      "Table sheets",
      "Step by step",
      "Strips and templates",
      "Child-safety tag",
      "Child safety",
      "Findings",
      "Workings",
    ]);
    for (const item of sets) {
      const [ref] = item.dest as [{ num: number; gen: number }];
      const page = pages[await pdf.getPageIndex(ref)];
      expect(page?.runs.some(({ text }) => text === item.title)).toBe(true);
      expect(page?.text).toMatch(/page 1 of/);
    }
  });

  // Trade notes, run X1: positions and lengths derived there by geometry, rounded to 1/8 in.
  test("marks the rows and columns of run X1, and both figures of a line add up to the whole", () => {
    const text = setPages(pages, "Table sheets");
    const rows = ["3 3⁄4", "11 3⁄8", "19", "26 5⁄8", "34 1⁄4", "41 3⁄4", "49 3⁄8"];
    rows.forEach((position, i) => {
      const [, rest = ""] =
        new RegExp(`Row ${i + 1} ${position} in ([\\d⁄ ]+?) (?=Row|Check)`).exec(text) ?? [];
      expect(eighths(position) + eighths(rest), `row ${i + 1}`).toBe(60 * 8);
    });
    ["2", "10", "18", "26", "34"].forEach((position, i) => {
      const [, rest = ""] =
        new RegExp(`Column ${i + 1} ${position} in ([\\d⁄ ]+?) (?=Column|Check)`).exec(text) ?? [];
      expect(eighths(position) + eighths(rest), `column ${i + 1}`).toBe(36 * 8);
    });
    expect(text).toContain("Top line 60 in");
  });

  test("cuts each cord as run X1 has it: 60 − 3.8 in of rise, its run, 30 in of tail and 6 in for knots", () => {
    const text = setPages(pages, "Table sheets");
    const cords = [...text.matchAll(/(\d) ([\d⁄ ]+) in \d, (left|right)/g)];
    expect(cords).toHaveLength(5);
    const cut = new Map(cords.map(([, number, length = ""]) => [Number(number), eighths(length)]));
    // Columns stand 8 in apart, so cords from one side differ by 8 in.
    expect((cut.get(1) ?? 0) - (cut.get(2) ?? 0)).toBe(8 * 8);
    for (const length of cut.values()) expect(length).toBeGreaterThan((56.25 + 30 + 6) * 8 - 1.5);
  });

  test("has on its job card what cords do to children, where and for whom the shade is", () => {
    const card = pages.find(({ runs }) => runs.some(({ text }) => text === "Table sheets"))?.text ?? "";
    expect(card).toContain("Cords and children");
    expect(card).toContain("strangle");
    expect(card).toContain(`${PLACE_NAMES.gb}; for your own home`);
    expect(card).toContain("36 in × 60 in");
  });

  test("every set that leaves the house has the cautions about cords and children on its first sheet", () => {
    for (const set of [
      "Client sheets",
      "Order",
      "Invoice",
      "Table sheets",
      "Step by step",
      "Strips and templates",
      "Cutting tickets",
    ]) {
      const first = pages.find(({ runs }) => runs.some(({ text }) => text === set));
      expect(first?.text, set).toContain("Window cords strangle small children");
    }
    const tag = pages.find(({ runs }) => runs.some(({ text }) => text === "Child-safety tag"));
    expect(tag?.text).toContain("Cords can strangle young children");
  });

  test("the sheets for the table are six, and nothing on them is smaller than 12 pt, nor a figure to work by than 14", () => {
    const sheets = pages.filter(({ runs }) => runs.some(({ text }) => text === "Table sheets"));
    expect(sheets).toHaveLength(6);
    for (const { runs, heightPt } of sheets) {
      const words = runs.filter(({ y, text }) => y > 60 && y < heightPt - 50 && text.trim() !== "");
      for (const { text, sizePt } of words) expect(sizePt, text).toBeGreaterThanOrEqual(12 - 0.05);
    }
    const large = sheets.flatMap(({ runs }) =>
      runs.filter(({ sizePt }) => sizePt >= 14).map(({ text }) => text),
    );
    // Rows, columns, cut sizes and cords of run X1: 56 1⁄4 + 30 5⁄8 + 30 + 6 in for the longest, its lock 3 3⁄8 in from the edge.
    for (const figure of ["49 3⁄8 in", "34 in", "42 in", "122 7⁄8 in"])
      expect(wholeText(large)).toContain(figure);
    const [cord = 0] = plan(JOB).shades[0]?.lift.cords.map(({ cutMm }) => cutMm) ?? [];
    expect(wholeText(large)).toContain(plainText(lengthText(cord, JOB.units)));
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

// What one shade takes of paper, so that a set that grows is seen.
test.each([
  ["usual", 20],
  ["helper", 17],
  ["client", 2],
] as const)("%s: %d pages at most for a plain shade", async (name, most) => {
  const bytes = await makeWorkbook({
    ...planAndCut(JOB),
    sets: SET_PRESETS[name],
    paper: "letter",
    fonts: FONTS,
  });
  expect((await openPdf(bytes)).numPages).toBeLessThanOrEqual(most);
});

test("the date is that of the maker’s calendar", async () => {
  const zone = process.env.TZ;
  process.env.TZ = "Pacific/Auckland";
  try {
    // Half past eleven at night in Greenwich is the next day in Auckland.
    const createdOn = new Date(Date.UTC(2025, 2, 1, 23, 30));
    const bytes = await makeWorkbook({
      plan: plan(JOB),
      sets: ["tag"],
      paper: "a4",
      fonts: FONTS,
      createdOn,
    });
    const [page] = await readPages(await openPdf(bytes));
    expect(page?.text).toContain("2025-03-02");
  } finally {
    if (zone === undefined) delete process.env.TZ;
    else process.env.TZ = zone;
  }
});

test("the same plan gives the same bytes", async () => {
  const make = () => makeWorkbook({ plan: plan(JOB), paper: "a4", fonts: FONTS });
  expect(Buffer.from(await make()).equals(Buffer.from(await make()))).toBe(true);
});

test("without an italic the regular stands in", async () => {
  const { regular, semibold } = FONTS;
  const bytes = await makeWorkbook({ plan: plan(JOB), paper: "a4", fonts: { regular, semibold } });
  const pages = await readPages(await openPdf(bytes));
  expect(wholeText(pages.map(({ text }) => text))).toContain("Seen from the room");
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

  test("opens with the job: its shades, its room to one scale; what is bought comes last, once", async () => {
    const pages = await readPages(
      await openPdf(await makeWorkbook({ plan: plan(job), paper: "letter", fonts: FONTS })),
    );
    const front = pages[0]?.runs ?? [];
    for (const name of ["one", "two", "three"]) {
      const y = front.find((run) => run.text === `Window ${name}`)?.y ?? 0;
      const row = front.filter((run) => Math.abs(run.y - y) < 2).sort((a, b) => a.x - b.x);
      expect(row.map((run) => run.text)).toEqual(expect.arrayContaining(["Upper landing", "36 in", "60 in"]));
    }
    expect(wholeText(pages.slice(0, 4).map(({ text }) => text))).toContain(
      "Seen from the room, to one scale. Lowered.",
    );
    expect(pages.filter(({ text }) => text.includes("Shopping list"))).toHaveLength(1);
    expect(pages.filter(({ text }) => text.includes("Before you begin"))).toHaveLength(1);
    expect(pages.at(-1)?.text).toContain("for whoever buys");
  });

  test("prints for each reader what that reader needs, as often as there are shades", async () => {
    const sets = (name: keyof typeof SET_PRESETS) =>
      makeWorkbook({ ...planAndCut(job), sets: SET_PRESETS[name], paper: "letter", fonts: FONTS }).then(
        async (bytes) => readPages(await openPdf(bytes)),
      );
    const client = await sets("client");
    expect(client).toHaveLength(4);
    for (const { text } of client) expect(text).not.toMatch(/Labour|Findings|Source:|Lock|slot/);
    expect(client[0]?.text).toMatch(/Quote.*Not to be sent yet.*Price/su);
    const cutter = await sets("cutter");
    expect(cutter.filter(({ text }) => text.includes("Labels for the pieces"))).toHaveLength(1);
    expect(cutter.filter(({ text }) => text.includes("for whoever makes it, at arm’s length"))).toHaveLength(
      18,
    );
  });

  test("can be made for some of its shades", async () => {
    const bytes = await makeWorkbook({ plan: plan(job), shadeIds: ["two"], paper: "letter", fonts: FONTS });
    const pages = await readPages(await openPdf(bytes));
    expect(wholeText(pages.map(({ text }) => text))).toContain("Window two");
    for (const page of pages) expect(page.text).not.toContain("Window one");
    await expect(
      makeWorkbook({ plan: plan(job), shadeIds: ["nine"], paper: "letter", fonts: FONTS }),
    ).rejects.toThrow("invalid shadeIds: nine");
  });

  test("tells how far it is, and can be stopped between two sheaves", async () => {
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
