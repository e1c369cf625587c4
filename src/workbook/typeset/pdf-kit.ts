import PDFDocument from "pdfkit";
import { FACE_NAMES, type FaceName, type Faces, type ShapedWord } from "../../letters/index.ts";
import { letGoOfWritten } from "./let-go.ts";

/**
 * One import for both worlds: the package resolves to its Node build in Node and to its browser build under a
 * bundler. Fonts go in already opened, so none of its built-in fonts and none of its file access is touched.
 */
export type PdfDocument = PDFKit.PDFDocument;
export type StructElement = PDFKit.PDFStructureElement;
export type OutlineItem = PDFKit.PDFOutline;

export interface DocumentFacts {
  title: string;
  subject: string;
  lang: string;
  widthPt: number;
  heightPt: number;
  /** Left out, the start of 1970 stands for it: the same plan gives the same bytes. */
  createdOn?: Date;
}

const PRODUCER = "Shadewright";

export function openDocument(facts: DocumentFacts, faces: Faces): PdfDocument {
  const doc = new PDFDocument({
    autoFirstPage: false,
    bufferPages: true,
    pdfVersion: "1.7",
    tagged: true,
    displayTitle: true,
    // Says that it keeps to PDF/UA-1 (ISO 14289-1); `pdf-ua.test.ts` holds it to that.
    subset: "PDF/UA" as unknown as "PDF/A-1",
    lang: facts.lang,
    size: [facts.widthPt, facts.heightPt],
    margin: 0,
    // No built-in font is ever loaded: the types ask for a name, the library takes none.
    font: null as unknown as string,
    // The faces remember the words that they have shaped, and no more than so many.
    fontLayoutCache: false,
    info: {
      Title: facts.title,
      Subject: facts.subject,
      Creator: PRODUCER,
      Producer: PRODUCER,
      CreationDate: facts.createdOn ?? new Date(0),
    },
  });
  for (const name of FACE_NAMES) {
    doc.registerFont(name, faces[name].font as unknown as Parameters<PdfDocument["registerFont"]>[1]);
  }
  askForFullSize(doc);
  letGoOfWritten(doc);
  return doc;
}

type Glyph = ShapedWord["glyphs"][number];

/** A face inside a document: it keeps the glyphs that it must embed, by the codes that stand for them on the page. */
export interface EmbeddedFace {
  id: string;
  ref: () => unknown;
  /** Thousandths of the size of type in a unit of the font. */
  scale: number;
  subset: { includeGlyph: (id: number) => number };
  widths: number[];
  unicode: (readonly number[])[];
}

/** Characters that a string in a page may not hold as they are (ISO 32000-1:2008, 7.3.4.2). */
const ESCAPED: Readonly<Record<number, string>> = { 13: "\\r", 40: "\\(", 41: "\\)", 92: "\\\\" };

const inString = (byte: number): string => ESCAPED[byte] ?? String.fromCharCode(byte);

/** The two bytes of a glyph's code as they stand in a string between round brackets; it is embedded from now on. */
export function glyphCode({ subset, widths, unicode, scale }: EmbeddedFace, glyph: Glyph): string {
  const code = subset.includeGlyph(glyph.id);
  widths[code] ??= glyph.advanceWidth * scale;
  unicode[code] ??= glyph.codePoints;
  return inString(code >> 8) + inString(code & 0xff);
}

/** The library keeps the face in use to itself; setting type word by word needs it. */
export function embeddedFace(doc: PdfDocument, name: FaceName): EmbeddedFace {
  doc.font(name);
  return (doc as unknown as { _font: EmbeddedFace })._font;
}

interface WithViewerPreferences {
  _root: { data: { ViewerPreferences?: { data: Record<string, unknown> } } };
}

/**
 * Asks the reader's print dialogue to open at full size (ISO 32000-1:2008, table 150, PrintScaling).
 * The library has no option for it; `make-workbook.test.ts` reads it back, so that an update cannot lose it.
 */
function askForFullSize(doc: PdfDocument): void {
  const preferences = (doc as unknown as WithViewerPreferences)._root.data.ViewerPreferences;
  if (preferences) preferences.data.PrintScaling = "None";
}

/** The way out of a document: what it has so far, and its end. */
export interface Outlet {
  /** Settles when everything that was handed out is written. */
  written: () => Promise<void>;
  ended: Promise<void>;
}

/** Hands every piece of the document on while it is made, one after the other. */
export function writeOut(doc: PdfDocument, write: (chunk: Uint8Array) => Promise<void>): Outlet {
  let queue: Promise<void> = Promise.resolve();
  doc.on("data", (chunk: Uint8Array) => {
    queue = queue.then(() => write(chunk));
    // Told to whoever waits for the queue; here it would count as unheard.
    queue.catch(() => {});
  });
  const ended = new Promise<void>((resolve, reject) => {
    doc.on("end", () => queue.then(resolve, reject));
    doc.on("error", reject);
  });
  ended.catch(() => {});
  // The library's stream begins to flow at the next turn. Who never lets one come would have it hold the whole document.
  const flows = new Promise<void>((resolve) => {
    setTimeout(resolve, 0);
  });
  return { written: () => flows.then(() => queue), ended };
}

export function joined(chunks: readonly Uint8Array[]): Uint8Array {
  const bytes = new Uint8Array(chunks.reduce((sum, chunk) => sum + chunk.byteLength, 0));
  let at = 0;
  for (const chunk of chunks) {
    bytes.set(chunk, at);
    at += chunk.byteLength;
  }
  return bytes;
}
