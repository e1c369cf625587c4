import { expect, test } from "vitest";
import { openPdf, readPages } from "../../../test/workbook/read-pdf.ts";
import { readWorkbookFonts } from "../../cli/workbook-fonts.ts";
import { openFaces } from "../../letters/index.ts";
import { joined, openDocument, writeOut } from "./pdf-kit.ts";
import { Pen } from "./pen.ts";

const faces = openFaces(readWorkbookFonts());

/** A document of two pages, drawn on by the pen. */
async function drawn(draw: (pen: Pen) => void): Promise<Uint8Array> {
  const doc = openDocument({ title: "", subject: "", lang: "en", widthPt: 600, heightPt: 800 }, faces);
  const chunks: Uint8Array[] = [];
  const out = writeOut(doc, async (chunk) => {
    chunks.push(chunk);
  });
  const pen = new Pen(doc, faces);
  for (let page = 0; page < 2; page += 1) {
    doc.addPage();
    draw(pen);
  }
  doc.end();
  await out.ended;
  return joined(chunks);
}

const STYLE = { face: "regular", sizePt: 10, leadingPt: 0, paint: "ink" } as const;

test("the outline of a letter stands in a document once, however often it has a border", async () => {
  const bytes = await drawn((pen) => {
    for (let line = 0; line < 3; line += 1) {
      const border = pen.halos.operators(faces.regular, "hem seam", STYLE.sizePt, 1);
      pen.doc.addContent(`q 1 1 1 RG 0.01 0 0 -0.01 50 ${100 + line * 20} cm ${border} Q`);
      pen.text("hem seam", 50, 100 + line * 20, STYLE);
    }
  });
  const file = Buffer.from(bytes).toString("latin1");
  // h, e, m, s and a; a space has no outline.
  expect(file.match(/\/Subtype \/Form/g)).toHaveLength(5);
  const pages = await readPages(await openPdf(bytes));
  expect(pages.map(({ text }) => text.match(/hem seam/g)?.length)).toEqual([3, 3]);
});

test("every glyph comes back as its letter, those too whose codes are brackets, backslash or return", async () => {
  // Codes are given in turn from 1: over a hundred letters go through 13, 40, 41 and 92.
  const letters = Array.from({ length: 300 }, (_, n) => String.fromCodePoint(0x21 + n)).filter(
    (letter) => faces.regular.has(letter.codePointAt(0) ?? 0) && /^[\p{L}\p{N}\p{P}]$/u.test(letter),
  );
  expect(letters.length).toBeGreaterThan(100);
  const lines = Array.from({ length: Math.ceil(letters.length / 8) }, (_, n) =>
    letters.slice(n * 8, n * 8 + 8).join(""),
  );
  const bytes = await drawn((pen) => {
    for (const [n, line] of lines.entries()) pen.text(line, 50, 40 + n * 15, STYLE);
  });
  const [page] = await readPages(await openPdf(bytes));
  expect((page?.text ?? "").replace(/\s/g, "").normalize("NFC")).toBe(lines.join("").normalize("NFC"));
});
