import { MM_PER_INCH } from "../../units/index.ts";
import type { Book } from "../typeset/book.ts";
import { BOTTOM_PT, MARGIN_PT, mm, pt } from "../typeset/paper.ts";

/** Printed again beyond every join, mm. */
export const OVERLAP_MM = 10;
/** Seven strips of this width leave room for the check bar on the narrower of both papers. */
const STRIP_WIDTH_MM = 20.5;
const STRIP_GAP_MM = 2;
const COLUMNS = 7;
/** Room over a strip for its key, mm, and between that and a strip over it. */
const KEY_MM = 8;
const OVER_KEY_MM = 3;
/** Room under the head for what is to be done before anything is cut, mm. */
const WORDS_MM = 7;
/** Side of the test square, and of the line in inches inside it. */
export const TEST_SQUARE_MM = 100;
export const TEST_LINE_IN = 4;

/** Where things stand on a page of strips, pt. */
export interface StripPage {
  /** Left edge of each column. */
  columnsX: number[];
  stripWidth: number;
  /** Highest a printed piece may begin, and where the lowest must end. */
  top: number;
  bottom: number;
  /** Left edge of the check bar, at the right of all columns. */
  barX: number;
}

export function stripPage(book: Book): StripPage {
  const step = pt(STRIP_WIDTH_MM + STRIP_GAP_MM);
  return {
    columnsX: Array.from({ length: COLUMNS }, (_, i) => MARGIN_PT + i * step),
    stripWidth: pt(STRIP_WIDTH_MM),
    top: book.top + pt(WORDS_MM + KEY_MM),
    bottom: book.paper.heightPt - BOTTOM_PT,
    barX: MARGIN_PT + COLUMNS * step,
  };
}

/** Length from join to join: whole inches or whole centimetres, so that every join lies at a round figure. */
export function tileLengthMm(page: StripPage, imperial: boolean): number {
  const freeMm = mm(page.bottom - page.top) - 2 * OVERLAP_MM;
  const step = imperial ? MM_PER_INCH : 10;
  return Math.floor(freeMm / step) * step;
}

/** Over each piece its key, and a little white over that. */
export const OVER_A_PIECE_PT = pt(KEY_MM + OVER_KEY_MM);
