import type { PDFDocumentProxy } from "pdfjs-dist/legacy/build/pdf.mjs";
import { beforeAll, describe, expect, test } from "vitest";
import { verdictIn } from "../../test/words.ts";
import { FONTS } from "../../test/workbook/fonts.ts";
import { openPdf, type ReadPage, readPages, readStrokes } from "../../test/workbook/read-pdf.ts";
import { cordedJob, stoppedJob } from "../../test/workbook/stopped-job.ts";
import { type Job, LIFT_KINDS, PLACES } from "../job/index.ts";
import { type Plan, plan } from "../plan/index.ts";
import { RULE_OUTCOME_NAMES } from "../shade-plan/index.ts";
import { makeWorkbook } from "./make-workbook.ts";
import type { PrintSet } from "./print-sets/index.ts";
import type { PaperKind } from "./typeset/paper.ts";

/** The sets that the rules bear on. */
const SETS: readonly PrintSet[] = ["table", "steps", "child-safety"];

async function made(job: Job, paper: PaperKind, sets = SETS) {
  const planned = plan(job);
  const pdf = await openPdf(await makeWorkbook({ plan: planned, sets, paper, fonts: FONTS }));
  return { planned, pdf, pages: await readPages(pdf) };
}

function shadeOf({ shades: [shade] }: Plan) {
  if (shade === undefined) throw new Error("no shade");
  return shade;
}

/** One blank for every gap, and words whole that were parted at their hyphen. */
const plainly = (text: string) =>
  text
    .replace(/\s+/g, " ")
    .replace(/(?<=[\p{L}\d])- (?=\p{L})/gu, "-")
    .trim();

/** Pages of a set, found by the words at their foot. */
function chapter(pages: readonly ReadPage[], title: string): string {
  return plainly(
    pages
      .filter(({ runs, heightPt }) => runs.some((run) => run.text === title && run.y > heightPt - 50))
      .map(({ text }) => text)
      .join(" "),
  );
}

/** A table breaks its words into lines cell by cell: each word of a text is somewhere, in order within its cell. */
function hasWords(text: string, wanted: string): boolean {
  return plainly(wanted)
    .split(" ")
    .every((word) => text.includes(word));
}

const DO_NOT = /Do not sell, give away or install/;

describe("cords over a lock, for sale in Canada", () => {
  let pdf: PDFDocumentProxy;
  let pages: ReadPage[];
  let planned: Plan;
  let text: string;

  beforeAll(async () => {
    ({ pdf, pages, planned } = await made(stoppedJob(), "letter"));
    text = chapter(pages, "Child safety");
  }, 60_000);

  test("every page carries the stamp at its head, framed, with a mark and a word", async () => {
    const { stampText = "" } = shadeOf(planned).safety;
    expect(stampText).toMatch(DO_NOT);
    expect(pages.length).toBeGreaterThan(20);
    for (const [i, page] of pages.entries()) {
      const head = page.runs.filter((run) => run.y < 110).map((run) => run.text);
      expect(plainly(head.join(" ")), `page ${i + 1}`).toContain(plainly(`Stop ${stampText}`));
      const strokes = await readStrokes(await pdf.getPage(i + 1));
      const frame = strokes.find((one) => one.top < 60 && one.penPt > 1 && one.height > 20);
      expect(frame?.width, `page ${i + 1}`).toBeCloseTo(page.widthPt - 2 * 54, 1);
      // Nothing of the page runs into the frame.
      const bottom = (frame?.top ?? 0) + (frame?.height ?? 0);
      const under = page.runs.filter(({ y, text: words }) => y > bottom && words.trim() !== "");
      expect(Math.min(...under.map(({ y, sizePt }) => y - sizePt))).toBeGreaterThan(bottom - 1);
    }
  });

  test("the stamp is content of every page, once, and not an artifact", async () => {
    for (let number = 1; number <= pdf.numPages; number += 1) {
      const { items } = await (await pdf.getPage(number)).getTextContent({ includeMarkedContent: true });
      const open: (string | undefined)[] = [];
      let said = 0;
      for (const item of items) {
        if ("str" in item) {
          if (item.str.includes("its cords fail") && open.at(-1) !== undefined) said += 1;
        } else if (item.type === "endMarkedContent") open.pop();
        else open.push("id" in item ? (item.id ?? undefined) : undefined);
      }
      expect(said, `page ${number}`).toBe(1);
    }
  });

  test("says the standing line, whose rules were read, and how many came to what", () => {
    const { safety } = shadeOf(planned);
    expect(text).toContain(plainly(safety.line));
    expect(text).toContain(plainly(safety.readAs));
    for (const [outcome, count] of Object.entries(safety.counts)) {
      expect(text).toContain(`${count} ${RULE_OUTCOME_NAMES[outcome as keyof typeof safety.counts]}`);
    }
  });

  test("has every rule with its outcome, number, limit, height, source, date and confidence, heaviest first", () => {
    const { results } = shadeOf(planned).safety;
    const places = results.map(({ ruleId }) => text.search(new RegExp(`\\b${ruleId} `)));
    for (const result of results) {
      expect(places, result.ruleId).not.toContain(-1);
      expect(hasWords(text, result.words), result.words).toBe(true);
      if (result.what !== undefined)
        expect(hasWords(text, `${result.valueText} ${result.limitText}`)).toBe(true);
    }
    expect(text).toMatch(/Failed A cord with a free end/);
    // SOR/2019-97 s. 5: 22 cm, read in the consolidation of May 2021.
    expect(text).toMatch(/Limit: at most 8 5⁄8 in \(220 mm\)/);
    expect(text).toMatch(/s\. 5\. In force; as of 2021-05\. Legal text or official page \(V1\)/);
    expect(text).toMatch(/Fully raised, hem 84 1⁄8 in above the floor/);
    const order = results.map(({ outcome }) => outcome);
    expect(order.indexOf("not-proven")).toBeGreaterThan(order.lastIndexOf("failed"));
  });

  test("draws the states that are worst and names the cords in them", () => {
    expect(text).toContain("Where it is worst: fully raised");
    expect(text).toContain("Where it is worst: fully lowered");
    const [, raised = "", lowered = ""] = text.split("Where it is worst:");
    expect(raised).toMatch(/Worst here: The cords below their lock, 81 3⁄4 in \(2075 mm\) \(CA-FREE\)/);
    expect(lowered).toMatch(/Worst here: The cord between the top ring and the board, 9 3⁄8 in/);
  });

  test("has each test with a box, what it decides, and room to write down what came of it", async () => {
    const { tests, results } = shadeOf(planned).safety;
    expect(tests.length).toBeGreaterThan(0);
    for (const { id, title, text: words } of tests) {
      expect(text).toContain(plainly(title));
      expect(text).toContain(plainly(words));
      const decides = results.filter((result) => result.test === id).map(({ ruleId }) => ruleId);
      expect(text).toContain(`of the table: ${decides.join(", ")}.`);
    }
    for (const label of ["What was found", "By whom", "Date"])
      expect(text.split(label).length - 1, label).toBe(tests.length);
    const boxes: number[] = [];
    for (const [i, page] of pages.entries()) {
      if (!page.text.includes("What was found")) continue;
      for (const { width, height } of await readStrokes(await pdf.getPage(i + 1)))
        if (Math.abs(width - 10) < 0.1 && Math.abs(height - 10) < 0.1) boxes.push(i);
    }
    expect(boxes.length).toBe(tests.length);
  });

  test("has the cautions with their sources, and the cover has the usual ones", () => {
    for (const { title, text: words } of shadeOf(planned).safety.cautions) {
      expect(text).toContain(plainly(title));
      expect(text).toContain(plainly(words));
    }
    const cover = plainly(`${pages[0]?.text} ${pages[1]?.text} ${pages[2]?.text}`);
    expect(cover).toContain("Cords and children");
    expect(cover).toContain("Never knot cords together");
  });
});

describe("where no stamp is due", () => {
  test.each([
    ["one's own home in Canada", cordedJob({ place: "ca", purpose: "own-home" })],
    ["one's own home in Great Britain", cordedJob({ place: "gb", purpose: "own-home" })],
    // Advice alone was read there.
    ["for sale in New Zealand", cordedJob({ place: "nz", purpose: "for-sale" })],
    [
      "for sale in Canada with a spring and covered cords",
      cordedJob({ place: "ca", purpose: "for-sale", kind: "spring", rearCords: "enclosed" }),
    ],
    ["no place, no purpose", cordedJob()],
  ])("%s: no page has one", async (_name, job) => {
    const { pages, planned } = await made(job, "a4");
    expect(shadeOf(planned).safety.stamp).toBe(false);
    for (const page of pages) expect(page.text).not.toMatch(DO_NOT);
    expect(chapter(pages, "Child safety")).toContain(plainly(shadeOf(planned).safety.line));
  });
});

test("a job of several: its own pages name the shades that are stopped, and only those have the stamp", async () => {
  const job = stoppedJob();
  const [room] = job.rooms;
  const [window] = room?.windows ?? [];
  if (room === undefined || window === undefined) throw new Error("no window");
  const cordless = { ...window, id: "west", name: "West window" };
  cordless.shade = { ...window.shade, making: { lift: { kind: "spring", rearCords: "enclosed" } } };
  const { pages } = await made({ ...job, rooms: [{ ...room, windows: [window, cordless] }] }, "letter");
  const wordsOf = (page: ReadPage | undefined) => plainly(page?.text ?? "");
  expect(wordsOf(pages[0])).toContain("Rules on cords failed for 1 of 2 shades: East window. Do not sell");
  expect(wordsOf(pages[1])).toContain("Rules on cords failed for 1 of 2 shades: East window.");
  const heads = pages.map((page) => page.runs.filter((run) => run.y < 60).map((run) => run.text));
  pages.forEach((page, i) => {
    if (heads[i]?.some((words) => words.endsWith("East window"))) expect(wordsOf(page)).toMatch(DO_NOT);
    if (heads[i]?.some((words) => words.endsWith("West window"))) expect(wordsOf(page)).not.toMatch(DO_NOT);
  });
  expect(heads.filter((head) => head.some((words) => words.endsWith("West window"))).length).toBeGreaterThan(
    15,
  );
});

test("where no result hangs on a height, no column stands empty for it", async () => {
  const job = cordedJob({ kind: "spring", rearCords: "enclosed", place: "us", purpose: "own-home" });
  const { pages } = await made(job, "letter", ["child-safety"]);
  const text = chapter(pages, "Child safety");
  expect(text).toContain("What the shade comes to, and the limit");
  expect(text).not.toMatch(/\bWorst\b/);
});

test("rules that no longer hold are listed, and never in the table (16 CFR 1260, vacated 12 September 2023)", async () => {
  const { pages, planned } = await made(cordedJob({ place: "us", purpose: "for-sale" }), "letter");
  const text = chapter(pages, "Child safety");
  const [table = "", list = ""] = text.split("Listed only, never a result");
  for (const { ruleId, words } of shadeOf(planned).safety.listed) {
    expect(table).not.toContain(ruleId);
    expect(list).toContain(ruleId);
    expect(hasWords(list, words)).toBe(true);
  }
  expect(list).toMatch(/Vacated .*US-1260/);
});

test.each(PLACES)("no page passes a verdict, nor holds a slip of the pen: %s", async (place) => {
  const { pages } = await made(cordedJob({ place, purpose: "for-sale" }), "a4");
  for (const page of pages) {
    expect(verdictIn(page.text), page.text).toBeUndefined();
    expect(page.text).not.toMatch(/undefined|NaN|Infinity|\[object|\bnull\b/);
  }
});

// The issue: cautions stand where the cords go in and where the shade goes up.
test.each(LIFT_KINDS)("cautions stand at the threading and at the hanging: %s", async (kind) => {
  const { planned, pages } = await made(cordedJob({ place: "gb", purpose: "own-home", kind }), "a4");
  for (const [name, chapterTitle] of [
    ["string", "Step by step"],
    ["hang", "Step by step"],
  ] as const) {
    const cautions = shadeOf(planned).steps.flatMap((step) =>
      step.chapter === name && step.caution?.match(/strangle/) ? [step.caution] : [],
    );
    expect(cautions.length, name).toBeGreaterThan(0);
    const text = chapter(pages, chapterTitle);
    for (const caution of cautions) expect(text).toContain(plainly(`Take care: ${caution}`));
  }
});
