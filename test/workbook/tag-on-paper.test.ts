import { createRequire } from "node:module";
import { openSync } from "fontkit";
import { beforeAll, describe, expect, test } from "vitest";
import { drawTag, place } from "../../src/drawing/index.ts";
import { plan } from "../../src/plan/index.ts";
import type { TagLine } from "../../src/shade-plan/index.ts";
import { makeWorkbook, type PaperKind } from "../../src/workbook/index.ts";
import { FONTS } from "./fonts.ts";
import { openPdf, readPages, readStrokes } from "./read-pdf.ts";
import { type CordedJob, cordedJob } from "./stopped-job.ts";

const files = createRequire(import.meta.url);
const open = (name: string) => {
  const font = openSync(files.resolve(`@expo-google-fonts/source-sans-3/${name}/SourceSans3_${name}.ttf`));
  if (!("layout" in font)) throw new Error(`invalid font: ${name}`);
  return font;
};
/** The faces by the names that the PDF gives them. */
const FACES: Record<string, ReturnType<typeof open>> = {
  "SourceSans3-Regular": open("400Regular"),
  "SourceSans3-SemiBold": open("600SemiBold"),
};

const MM_PER_PT = 25.4 / 72;

/** SOR/2019-97 s. 12: signal word 5 mm in bold capitals, other words 2.5 mm. SLI 2010 No. 212: 5 mm and 1.5 mm. */
const CASES: [name: string, job: CordedJob, paper: PaperKind, signalMm: number, textMm: number][] = [
  ["Canada on Letter, with its stamp", { place: "ca", purpose: "for-sale" }, "letter", 5, 2.5],
  ["Canada on A4", { place: "ca", purpose: "own-home" }, "a4", 5, 2.5],
  ["Australia on A4, with its stamp", { place: "au", purpose: "for-sale" }, "a4", 5, 1.5],
  ["the United Kingdom on Letter", { place: "gb", purpose: "own-home" }, "letter", 5, 2.5],
];

describe.each(CASES)("the tag in the workbook: %s", (_name, job, paper, signalMm, textMm) => {
  let made: Awaited<ReturnType<typeof tagPages>>;
  beforeAll(async () => {
    made = await tagPages();
  });

  async function tagPages() {
    const planned = plan(cordedJob(job));
    const [blank] = planned.shades;
    if (blank === undefined) throw new Error("no shade");
    // Which shade it is the job knows; the month is not told here, so that its line stays blank.
    const lines = blank.tag.lines.map((line) =>
      line.asks === "model" ? { ...line, text: line.text.replace(/_+$/, "East window, Ferry House") } : line,
    );
    const shade = { ...blank, tag: { ...blank.tag, lines } };
    const pdf = await openPdf(await makeWorkbook({ plan: planned, sets: ["tag"], paper, fonts: FONTS }));
    const pages = await readPages(pdf);
    const numbers = pages.map((_page, i) => i + 1);
    return { shade, pdf, pages, numbers };
  }

  test("its letters are as high as the rule asks: size on the page times outline in the font file", async () => {
    const { shade, pdf, numbers } = made;
    const heights: Record<"signal" | "text", number[]> = { signal: [], text: [] };
    const said: string[] = [];
    for (const number of numbers) {
      const page = await pdf.getPage(number);
      await page.getOperatorList();
      const { items } = await page.getTextContent({ disableNormalization: true });
      for (const item of items) {
        if (!("str" in item) || item.str.trim() === "") continue;
        // The head of the page names the job as the tag does.
        if ((page.view[3] ?? 0) - item.transform[5] < 60) continue;
        const sizePt = Math.hypot(item.transform[0], item.transform[1]);
        // Everything else on these pages, heads and notes, is set smaller or is the chapter's own title.
        const line = lineOf(shade.tag.lines, item.str, sizePt);
        // The tag begins with its signal word; a word of the stamp above it may be one of its own by chance.
        if (line === undefined || (said.length === 0 && line.kind !== "signal")) continue;
        const { name } = page.commonObjs.get(item.fontName) as { name: string };
        const font = FACES[name.replace(/^[A-Z]{6}\+/, "")];
        if (font === undefined) throw new Error(`another face: ${name}`);
        said.push(item.str);
        const letters = [...item.str].filter((one) =>
          (line.capitals ? /\p{Lu}/u : /[acemnorsuvwxz]/).test(one),
        );
        for (const letter of letters) {
          const em = (font.layout(letter).glyphs[0]?.bbox.maxY ?? 0) / font.unitsPerEm;
          heights[line.kind === "signal" ? "signal" : "text"].push(em * sizePt * MM_PER_PT);
        }
        if (line.kind === "signal") expect(name).toContain("SemiBold");
      }
    }
    expect(Math.min(...heights.signal)).toBeGreaterThanOrEqual(signalMm);
    expect(Math.min(...heights.text)).toBeGreaterThanOrEqual(textMm);
    expect(heights.signal.length).toBeGreaterThanOrEqual("WARNING".length * shade.tag.languages.length);
    const wanted = shade.tag.lines.map(({ text }) => text.replace(/\s*_+$/, ""));
    expect([...said.join(" ").replace(/\s+/g, " ")].sort().join("")).toBe(
      [...wanted.join(" ").replace(/\s+/g, " ")].sort().join(""),
    );
  });

  test("its cut line is as large as drawn, inside the margins, and the note is outside it", async () => {
    const { shade, pdf, pages, numbers } = made;
    const drawn = drawTag(shade).map((drawing) => place(drawing, { scale: 1 }));
    const cut = drawn.map(({ items }) => {
      const path = items.find((item) => item.kind === "path" && item.role === "cut" && item.part === "tag");
      if (path?.kind !== "path") throw new Error("no cut line");
      const [xs, ys] = [0, 1].map((axis) => path.lines.flat().map((point) => point[axis] ?? 0));
      return [xs, ys].map((values) => Math.max(...(values ?? [])) - Math.min(...(values ?? [])));
    });
    let found = 0;
    for (const number of numbers) {
      const { widthPt, heightPt, runs } = pages[number - 1] ?? { widthPt: 0, heightPt: 0, runs: [] };
      const boxes = (await readStrokes(await pdf.getPage(number))).filter(({ width, height }) =>
        cut.some(
          ([w = 0, h = 0]) =>
            Math.abs(width * MM_PER_PT - w) < 0.05 && Math.abs(height * MM_PER_PT - h) < 0.05,
        ),
      );
      found += boxes.length;
      for (const { left, top, width, height } of boxes) {
        expect(left).toBeGreaterThan(50);
        expect(left + width).toBeLessThan(widthPt - 50);
        expect(top + height).toBeLessThan(heightPt - 60);
        const note = runs.filter(({ text }) => shade.tag.note.includes(text) && text.split(" ").length > 4);
        expect(note.length).toBeGreaterThan(0);
        for (const { x, y } of note)
          expect(x > left && x < left + width && y > top && y < top + height).toBe(false);
      }
    }
    expect(found).toBe(cut.length);
  });
});

/** The line of the tag that a run of text is from, told from other text of the same page by its size. */
function lineOf(lines: readonly TagLine[], text: string, sizePt: number): TagLine | undefined {
  return lines.find((line) => line.text.includes(text.trim()) && sizePt * MM_PER_PT > line.minHeightMm * 1.4);
}
