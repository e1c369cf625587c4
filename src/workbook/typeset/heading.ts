import type { Book } from "./book.ts";
import type { Span } from "./paper.ts";
import { setLines } from "./paragraph.ts";
import { firstBaseline, TYPE } from "./type-scale.ts";

const NUMBER_WIDTH = 38;
/** Over the heading of a section, pt, and what a heading of one line takes with the space under it. */
export const SPACE_ABOVE = 8;
export const SECTION_ROOM_PT = TYPE.section.leadingPt + 4;

/** Number, title and name of a chapter, as its head, the contents and the outline have them. */
export interface ChapterHead {
  /** 0 for a page that is not numbered. */
  number: number;
  title: string;
  /** Name for links to it. */
  anchor: string;
}

export interface ChapterOpening extends ChapterHead {
  /** A sentence that says what the chapter is for. */
  lead?: string;
}

/** Opens a chapter on a page of its own. */
export function openChapter(book: Book, { number, title, lead, anchor }: ChapterOpening): void {
  book.run({ chapter: title });
  book.turnPage();
  book.bookmark(number === 0 ? title : `${number}  ${title}`, false);
  book.anchor(anchor);
  const indent = number === 0 ? 0 : NUMBER_WIDTH;
  const lines = book.lines(title, book.width - indent, TYPE.chapter);
  const { y } = book;
  book.tags.mark("H2", () => {
    if (number > 0)
      book.pen.text(String(number), book.left, y + firstBaseline(TYPE.chapter), TYPE.chapterNumber);
    setLines(book, lines, book.left + indent, y, TYPE.chapter);
  });
  book.y += lines.length * TYPE.chapter.leadingPt + 3;
  if (lead !== undefined) {
    const under = book.lines(lead, book.width - indent - 40, TYPE.lead);
    const leadY = book.y;
    book.tags.mark("P", () => setLines(book, under, book.left + indent, leadY, TYPE.lead));
    book.y += under.length * TYPE.lead.leadingPt;
  }
  book.y += 16;
}

/** A heading inside a chapter. It takes `keep` points of what follows along to the next page. */
export function section(book: Book, title: string, keep = 60, span?: Span): void {
  const { x, width } = span ?? { x: book.left, width: book.width };
  const lines = book.lines(title, width, TYPE.section);
  const height = lines.length * TYPE.section.leadingPt;
  const above = span === undefined && book.y > book.top + 1 ? SPACE_ABOVE : 0;
  book.need(above + height + keep);
  if (book.y > book.top + 1) book.y += above;
  const { y } = book;
  book.tags.mark("H3", () => setLines(book, lines, x, y, TYPE.section));
  book.y += height + 4;
}
