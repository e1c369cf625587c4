import { MM_PER_INCH } from "../../units/index.ts";
import type { Book } from "../typeset/book.ts";
import { BOTTOM_PT, MARGIN_PT, mm, pt } from "../typeset/paper.ts";

/** Printed again beyond every join, mm. */
export const OVERLAP_MM = 10;
/** Three strips of this width leave room for the test square on the narrower of both papers. */
const STRIP_WIDTH_MM = 20.5;
const STRIP_GAP_MM = 2;
export const STRIPS_ON_A_PAGE = 3;
/** Room over a strip for its key, mm. */
const KEY_MM = 8;
/** Side of the test square, and of the line in inches inside it. */
export const TEST_SQUARE_MM = 100;
export const TEST_LINE_IN = 4;

/** Where things stand on a page of strips, pt. */
export interface StripPage {
  /** Left edge of each strip. */
  stripsX: number[];
  stripWidth: number;
  /** Highest a printed piece may begin, and where it must end. */
  top: number;
  bottom: number;
  /** Left edge of the test square: it ends at the right margin. */
  asideX: number;
}

export function stripPage(book: Book): StripPage {
  const step = pt(STRIP_WIDTH_MM + STRIP_GAP_MM);
  return {
    stripsX: Array.from({ length: STRIPS_ON_A_PAGE }, (_, i) => MARGIN_PT + i * step),
    stripWidth: pt(STRIP_WIDTH_MM),
    top: book.top + pt(KEY_MM),
    bottom: book.paper.heightPt - BOTTOM_PT,
    asideX: book.paper.widthPt - MARGIN_PT - pt(TEST_SQUARE_MM),
  };
}

/** Length from join to join: whole inches or whole centimetres, so that every join lies at a round figure. */
export function tileLengthMm(page: StripPage, imperial: boolean): number {
  const freeMm = mm(page.bottom - page.top) - 2 * OVERLAP_MM;
  const step = imperial ? MM_PER_INCH : 10;
  return Math.floor(freeMm / step) * step;
}
