import {
  getDocument,
  OPS,
  type PDFDocumentProxy,
  type PDFPageProxy,
  Util,
} from "pdfjs-dist/legacy/build/pdf.mjs";

/** One run of text as an independent reader finds it: left end of its baseline from the page's top left, pt. */
export interface TextRun {
  text: string;
  x: number;
  y: number;
  width: number;
  sizePt: number;
  upright: boolean;
  /** Clockwise, as on the page. */
  angleDeg: number;
}

/** One stroked path by its box, pt from the top left, with the pen it was drawn with. */
export interface Stroke {
  left: number;
  top: number;
  width: number;
  height: number;
  penPt: number;
}

export interface ReadPage {
  widthPt: number;
  heightPt: number;
  /** All text of the page in the order in which it was set, runs joined by spaces. */
  text: string;
  runs: TextRun[];
}

export async function openPdf(bytes: Uint8Array): Promise<PDFDocumentProxy> {
  return getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise;
}

async function readPage(page: PDFPageProxy): Promise<ReadPage> {
  const [, , widthPt = 0, heightPt = 0] = page.view;
  const { items } = await page.getTextContent({ disableNormalization: true });
  const runs = items.flatMap((item): TextRun[] => {
    if (!("str" in item) || item.str === "") return [];
    const [a, b, , , x, y] = item.transform as [number, number, number, number, number, number];
    return [
      {
        text: item.str,
        x,
        y: heightPt - y,
        width: item.width,
        sizePt: Math.hypot(a, b),
        upright: Math.abs(b) < 1e-6 && a > 0,
        angleDeg: (-Math.atan2(b, a) * 180) / Math.PI,
      },
    ];
  });
  return {
    widthPt,
    heightPt,
    runs,
    text: runs
      .map((run) => run.text)
      .join(" ")
      .replace(/\s+/g, " "),
  };
}

export async function readPages(pdf: PDFDocumentProxy): Promise<ReadPage[]> {
  const pages: ReadPage[] = [];
  for (let number = 1; number <= pdf.numPages; number += 1)
    pages.push(await readPage(await pdf.getPage(number)));
  return pages;
}

type Matrix = [number, number, number, number, number, number];

/** Every stroked path of a page, read from its drawing operators. */
export async function readStrokes(page: PDFPageProxy): Promise<Stroke[]> {
  const [, , , heightPt = 0] = page.view;
  const { fnArray, argsArray } = await page.getOperatorList();
  const stack: { matrix: Matrix; penPt: number }[] = [];
  let state: { matrix: Matrix; penPt: number } = { matrix: [1, 0, 0, 1, 0, 0], penPt: 1 };
  const strokes: Stroke[] = [];
  fnArray.forEach((operation, i) => {
    const args = argsArray[i] as unknown[];
    switch (operation) {
      case OPS.save:
        stack.push({ ...state });
        break;
      case OPS.restore:
        state = stack.pop() ?? state;
        break;
      case OPS.transform:
        state = { ...state, matrix: Util.transform(state.matrix, args as number[]) as Matrix };
        break;
      case OPS.setLineWidth:
        state = { ...state, penPt: args[0] as number };
        break;
      case OPS.constructPath: {
        const [paint, , box] = args as [number, unknown, Float32Array];
        if (paint !== OPS.stroke || box === null) break;
        const [x1 = 0, y1 = 0, x2 = 0, y2 = 0] = box;
        const [a, , , d, e, f] = state.matrix;
        const xs = [a * x1 + e, a * x2 + e];
        const ys = [heightPt - (d * y1 + f), heightPt - (d * y2 + f)];
        const [left, top] = [Math.min(...xs), Math.min(...ys)];
        strokes.push({
          left,
          top,
          width: Math.max(...xs) - left,
          height: Math.max(...ys) - top,
          penPt: state.penPt,
        });
        break;
      }
    }
  });
  return strokes;
}
