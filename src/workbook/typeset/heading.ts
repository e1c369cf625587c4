import type { Book } from "./book.ts";
import type { Span } from "./paper.ts";
import { setLines } from "./paragraph.ts";
import { TYPE } from "./type-scale.ts";

/** Over and under the heading of a section, pt, and what a heading of one line takes with the space under it. */
export const SPACE_ABOVE = 8;
export const SPACE_BELOW = 4;
export const SECTION_ROOM_PT = TYPE.tableSection.leadingPt + SPACE_BELOW;

export interface PageOpening {
  title: string;
  /** A sentence that says what the pages are for. */
  lead?: string;
}

/** Begins on a page of its own, with a title that stands in the outline too. */
export function openPage(book: Book, { title, lead }: PageOpening): void {
  book.turnPage();
  book.bookmark(title);
  const lines = book.lines(title, book.width, book.look.chapter);
  const { y } = book;
  book.tags.mark("H2", () => setLines(book, lines, book.left, y, book.look.chapter));
  book.y += lines.length * book.look.chapter.leadingPt + 3;
  if (lead !== undefined) {
    const under = book.lines(lead, book.width - 40, book.look.lead);
    const leadY = book.y;
    book.tags.mark("P", () => setLines(book, under, book.left, leadY, book.look.lead));
    book.y += under.length * book.look.lead.leadingPt;
  }
  book.y += 14;
}

/** A heading inside a page. It takes `keep` points of what follows along to the next page. */
export function section(book: Book, title: string, keep = 60, span?: Span): void {
  const { x, width } = span ?? { x: book.left, width: book.width };
  const style = book.look.section;
  const lines = book.lines(title, width, style);
  const height = lines.length * style.leadingPt;
  const above = span === undefined && book.y > book.top + 1 ? SPACE_ABOVE : 0;
  book.need(above + height + SPACE_BELOW + keep);
  if (book.y > book.top + 1) book.y += above;
  const { y } = book;
  book.tags.mark("H3", () => setLines(book, lines, x, y, style));
  book.y += height + SPACE_BELOW;
}
