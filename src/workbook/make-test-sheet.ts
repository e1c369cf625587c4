import { openFaces, type WorkbookFonts } from "../letters/index.ts";
import { testSheetPage } from "./pages/test-sheet.ts";
import { SET_WORDS } from "./print-sets/index.ts";
import { Book } from "./typeset/book.ts";
import { DESK } from "./typeset/look.ts";
import { PAPERS, type PaperKind } from "./typeset/paper.ts";
import { joined, openDocument, writeOut } from "./typeset/pdf-kit.ts";

/** The sheet on which the tests of a part are written down, as PDF: one page, with no job at all. */
export async function makeTestSheet(paperKind: PaperKind, fonts: WorkbookFonts): Promise<Uint8Array> {
  const paper = PAPERS[paperKind];
  const faces = openFaces(fonts);
  const { name, reader } = SET_WORDS.parts;
  const doc = openDocument(
    {
      title: "Five tests at the bench",
      subject: "How to measure a lock, a cord and an eye, with room for the readings",
      lang: "en",
      widthPt: paper.widthPt,
      heightPt: paper.heightPt,
    },
    faces,
  );
  const chunks: Uint8Array[] = [];
  const out = writeOut(doc, async (chunk) => {
    chunks.push(chunk);
  });
  const book = new Book(doc, faces, paper);
  book.look = DESK;
  book.tags.open("Document");
  book.run({ job: "", shade: "", set: name, reader, remark: "" });
  book.tags.open("Sect", { title: name });
  testSheetPage(book);
  book.tags.close();
  book.endSheaf();
  book.tags.close();
  await out.written();
  doc.end();
  await out.ended;
  return joined(chunks);
}
