import fc from "fast-check";
import { expect, test } from "vitest";
import { FONTS } from "../../test/workbook/fonts.ts";
import { openPdf, readPages } from "../../test/workbook/read-pdf.ts";
import { x1Job } from "../../test/workbook/x1-job.ts";
import { type Job, jobSchema } from "../job/index.ts";
import { NO_SHAPE } from "../letters/index.ts";
import { plan } from "../plan/index.ts";
import { makeWorkbook } from "./make-workbook.ts";
import { PRINT_SETS, type PrintSet } from "./print-sets/index.ts";

function named(name: string): Job {
  const job = x1Job();
  return jobSchema.parse({
    ...job,
    name,
    client: name,
    cloths: [{ id: "cloth", name, usableWidthMm: 1370, massGsm: 200 }],
    rooms: job.rooms.map((room) => ({
      ...room,
      name,
      windows: room.windows.map((window) => ({ ...window, name, shade: { ...window.shade, face: "cloth" } })),
    })),
  });
}

async function read(name: string, paper: "letter" | "a4" = "a4", sets: readonly PrintSet[] = PRINT_SETS) {
  const job = named(name);
  return readPages(await openPdf(await makeWorkbook({ plan: plan(job), sets, paper, fonts: FONTS })));
}

/** All letters of a page in order, spaces and line breaks taken out. */
const letters = (text: string) => text.replace(/\s/g, "");

/** Names of the greatest length that a job may hold (120 letters), and some that try to be more than text. */
const NAMES = [
  "W".repeat(120),
  "i".repeat(120),
  `${"Drawing room, north wall, third window from the door ".repeat(2)}and so on`,
  "<script>alert(1)</script>",
  "(unbalanced \\( parenthesis) Tj ET endstream endobj %%EOF",
  "-".repeat(120),
  "a/b/c/".repeat(20),
];

test.each(NAMES)("%s is printed whole, and nothing runs off the page", async (name) => {
  const pages = await read(name, "letter");
  for (const [i, page] of pages.entries()) {
    const heads = letters(
      page.runs
        .filter((run) => run.y < 110)
        .map((run) => run.text)
        .join(""),
    );
    expect(heads, `page ${i + 1}`).toContain(letters(name));
    for (const run of page.runs) {
      const right = run.upright ? run.x + run.width : run.x;
      expect(run.x).toBeGreaterThan(36);
      expect(right, `page ${i + 1}: ${run.text}`).toBeLessThan(page.widthPt - 36);
      expect(run.y).toBeGreaterThan(24);
      expect(run.y, `page ${i + 1}: ${run.text}`).toBeLessThan(page.heightPt - 24);
    }
  }
});

test("two names too long for one line stand under each other", async () => {
  // Sheets of a shade: those of the job have one name at their head.
  const [first] = await read("A name that is about as long as half a page", "a4", ["tag"]);
  const head = (first?.runs ?? []).filter((run) => run.y < 60 && run.text.trim() !== "");
  expect(head).toHaveLength(2);
  for (const [i, run] of head.entries()) {
    for (const other of head.slice(i + 1)) {
      const apart =
        Math.abs(run.y - other.y) > 8 || run.x + run.width < other.x || other.x + other.width < run.x;
      expect(apart, `${run.text} and ${other.text}`).toBe(true);
    }
  }
});

test("letters that the typeface lacks show as a box, marks that turn the reading order are dropped", async () => {
  const pages = await read("Küche 日本 \u202egnp.exe\u2066 Ελλάδα 🪟");
  const [head] = pages[0]?.runs ?? [];
  expect(head?.text).toBe(`Küche ${NO_SHAPE}${NO_SHAPE} gnp.exe Ελλάδα ${NO_SHAPE}`);
  // Every page that shows one says so, those for the client too.
  for (const { runs, text } of pages.filter((page) => page.text.includes(NO_SHAPE))) {
    expect(text).toContain(`${NO_SHAPE} is a letter that this type has no shape for`);
    expect(runs.length).toBeGreaterThan(0);
  }
  const plain = await read("Küche", "a4", ["tag"]);
  expect(plain.map(({ text }) => text).join()).not.toContain("no shape for");
});

test("marks that hang over their letters are kept", async () => {
  // One pair that the typeface has as a letter of its own, one that it has not.
  const [first] = await read("Bru\u030a q\u030a");
  const head = letters(
    first?.runs
      .slice(0, 8)
      .map((run) => run.text)
      .join("") ?? "",
  );
  expect(head.normalize("NFC")).toContain(letters("Brů q\u030a"));
});

test("any name gives a workbook whose text keeps to its pages", async () => {
  const name = fc.string({ unit: "binary", minLength: 1, maxLength: 120 }).filter((text) => {
    const parsed = jobSchema.safeParse({ ...x1Job(), name: text });
    return parsed.success;
  });
  await fc.assert(
    fc.asyncProperty(name, async (text) => {
      for (const page of await read(text)) {
        for (const run of page.runs) {
          expect(run.x + (run.upright ? run.width : 0)).toBeLessThan(page.widthPt - 36);
          expect(run.y).toBeLessThan(page.heightPt - 24);
        }
      }
    }),
    { numRuns: 6 },
  );
});
