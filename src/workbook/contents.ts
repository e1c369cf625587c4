import type { Book } from "./book.ts";
import { columns } from "./paper.ts";
import { firstBaseline } from "./paragraph.ts";
import { painted, TYPE } from "./type-scale.ts";

export interface ContentsEntry {
  title: string;
  anchor: string;
}

const STYLE = TYPE.body;
const ROW_PT = 19;
const PAGE_WIDTH = 26;

/**
 * A list of contents in two columns. Its room is taken now; titles and page numbers are set at the end,
 * when the numbers are known.
 */
export function contentsList(book: Book, entries: readonly ContentsEntry[]): void {
  const perColumn = Math.ceil(entries.length / 2);
  const height = perColumn * ROW_PT;
  book.need(Math.min(height, book.bottom - book.top));
  const top = book.y;
  const element = book.tags.reserve("TOC");
  book.later(() => {
    book.tags.fill(element, () => {
      entries.forEach((entry, i) => {
        const column = Math.floor(i / perColumn);
        const { x, width } = columns(book.paper, column * 6, 6);
        setEntry(book, entry, x, top + (i % perColumn) * ROW_PT, width);
      });
    });
  });
  book.y += height + 14;
}

function setEntry(book: Book, { title, anchor }: ContentsEntry, x: number, y: number, width: number): void {
  const page = String(book.pageOf(anchor));
  const baseline = y + firstBaseline({ ...STYLE, leadingPt: ROW_PT });
  book.tags.within("TOCI", () => {
    book.tags.link(anchor, `${title}, page ${page}`, [x, y, width, ROW_PT], () => {
      book.pen.text(page, x + PAGE_WIDTH - 10, baseline, painted(TYPE.strong, "accent"), "end");
      book.pen.text(book.lines(title, width - PAGE_WIDTH, STYLE)[0] ?? "", x + PAGE_WIDTH, baseline, STYLE);
    });
  });
}
