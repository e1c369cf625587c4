import { openFaces } from "../../src/letters/index.ts";
import { Book } from "../../src/workbook/typeset/book.ts";
import { PAPERS } from "../../src/workbook/typeset/paper.ts";
import { joined, openDocument, writeOut } from "../../src/workbook/typeset/pdf-kit.ts";
import { FONTS } from "./fonts.ts";
import { openPdf, type ReadPage, readPages } from "./read-pdf.ts";

const PAPER = PAPERS.letter;

/** A document of what is set, read back: its first page is turned to before. */
export async function pagesOfBook(set: (book: Book) => void): Promise<ReadPage[]> {
  const faces = openFaces(FONTS);
  const facts = {
    title: "List",
    subject: "List",
    lang: "en",
    widthPt: PAPER.widthPt,
    heightPt: PAPER.heightPt,
  };
  const doc = openDocument(facts, faces);
  const chunks: Uint8Array[] = [];
  const out = writeOut(doc, async (chunk) => {
    chunks.push(chunk);
  });
  const book = new Book(doc, faces, PAPER);
  book.tags.open("Document");
  book.turnPage();
  set(book);
  book.endSheaf();
  book.tags.close();
  doc.end();
  await out.ended;
  return readPages(await openPdf(joined(chunks)));
}
