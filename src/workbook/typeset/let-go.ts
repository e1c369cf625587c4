/** The library’s own name for it: `pdf-kit.ts` opens documents by way of this file. */
type PdfDocument = PDFKit.PDFDocument;

/** An object of the document: its number, and what it says. */
interface Written {
  id: number;
  data: unknown;
}

/** What the library's document keeps to itself of the objects it writes (pdfkit 0.20). */
interface Inside {
  _refEnd: (written: Written) => void;
  _pageBuffer: readonly { dictionary: { data: { StructParents: number } } }[];
  ref: (data: unknown) => Written & { end: () => void };
  getStructParentTree: () => {
    get: (key: number) => unknown;
    add: (key: number, value: unknown) => void;
  };
}

/** Of an element that is written the library asks only whether it had a parent. */
const HAD_PARENT = { P: true, K: null };

/**
 * Lets go of what pages and elements of meaning say as soon as it is written: others name them by their numbers, and
 * the library would keep all of them until the document ends, 80 thousand of them in a workbook of 150 shades.
 */
export function letGoOfWritten(doc: PdfDocument): void {
  const inside = doc as unknown as Inside;
  const end = inside._refEnd.bind(doc);
  inside._refEnd = (written) => {
    end(written);
    const said = written.data as { Type?: unknown; S?: unknown; P?: unknown };
    if (said.Type === "Page") written.data = {};
    else if (said.S !== undefined && said.P !== undefined) written.data = HAD_PARENT;
  };
}

/**
 * Writes the pages that are done, and for each which elements its marks belong to, a row of the parent tree
 * (ISO 32000-1:2008, 14.7.4.4), as an object of its own: kept as a list it would hold on to every element.
 */
export function writePages(doc: PdfDocument): void {
  const inside = doc as unknown as Inside;
  const keys = inside._pageBuffer.map(({ dictionary }) => dictionary.data.StructParents);
  doc.flushPages();
  const tree = inside.getStructParentTree();
  for (const key of keys) {
    const row = inside.ref(tree.get(key));
    row.end();
    row.data = {};
    tree.add(key, row);
  }
}
