import { setFlagsFromString } from "node:v8";
import { runInNewContext } from "node:vm";
import { expect, test } from "vitest";
import { FONTS } from "../../../test/workbook/fonts.ts";
import { openPdf } from "../../../test/workbook/read-pdf.ts";
import { openFaces } from "../../letters/index.ts";
import { Book } from "./book.ts";
import { PAPERS } from "./paper.ts";
import { openDocument, writeOut } from "./pdf-kit.ts";
import { TYPE } from "./type-scale.ts";

const PAPER = PAPERS.letter;
const PAGES = 300;
/** About as many as a page of a workbook has. */
const ELEMENTS = 60;

setFlagsFromString("--expose-gc");
const collect = runInNewContext("gc") as () => void;

function live(): number {
  collect();
  collect();
  return process.memoryUsage().heapUsed;
}

test("a book in the making keeps next to nothing of a page that is written, and the page keeps its meaning", async () => {
  const faces = openFaces(FONTS);
  const doc = openDocument(
    { title: "B", subject: "B", lang: "en", widthPt: PAPER.widthPt, heightPt: PAPER.heightPt },
    faces,
  );
  // In one piece: ten thousands of small ones would weigh more than what is looked for.
  const bytes = new Uint8Array(16_000_000);
  let length = 0;
  const out = writeOut(doc, async (chunk) => {
    bytes.set(chunk, length);
    length += chunk.byteLength;
  });
  const book = new Book(doc, faces, PAPER);
  book.tags.open("Document");
  const page = async (name: string) => {
    book.tags.open("Sect", { title: name });
    book.turnPage();
    book.tags.within("L", () => {
      for (let n = 0; n < ELEMENTS / 2; n++) {
        book.tags.within("LI", () => {
          book.tags.mark("LBody", () => book.pen.text("a line", 40, 100 + 10 * n, TYPE.small));
        });
      }
    });
    book.tags.close();
    book.endSheaf();
    await out.written();
  };
  for (let n = 0; n < 20; n++) await page(`page ${n}`);
  const before = live();
  for (let n = 0; n < PAGES; n++) await page(`later ${n}`);
  // Sixty elements that are kept weigh about 20,000.
  const keptPerPage = (live() - before) / PAGES;
  expect(keptPerPage).toBeLessThan(4000);
  book.tags.close();
  doc.end();
  await out.ended;

  const read = await openPdf(bytes.slice(0, length));
  expect(read.numPages).toBe(PAGES + 20);
  const tree = await (await read.getPage(PAGES)).getStructTree();
  const names = JSON.stringify(tree);
  expect(names.match(/"LBody"/g)).toHaveLength(ELEMENTS / 2);
  expect(names.match(/"type":"content"/g)?.length ?? 0).toBeGreaterThanOrEqual(ELEMENTS / 2);
});
