import type { Book } from "./book.ts";
import type { StructType } from "./tags.ts";
import { firstBaseline, type TextStyle } from "./type-scale.ts";

export interface TextBlock {
  style?: TextStyle;
  x?: number;
  width?: number;
  tag?: StructType;
  /** Space under it, pt. */
  after?: number;
}

/** Sets lines that are known to fit on this page, from the top at `y`. */
export function setLines(book: Book, lines: readonly string[], x: number, y: number, style: TextStyle): void {
  lines.forEach((line, i) => {
    book.pen.text(line, x, y + i * style.leadingPt + firstBaseline(style), style);
  });
}

/** How many of `count` lines go on this page: never one alone at the foot or at the head of the next. */
export function linesThatStay(count: number, room: number, leadingPt: number): number {
  const fit = Math.floor((room + 0.01) / leadingPt);
  if (fit >= count) return count;
  const stay = count - fit === 1 ? fit - 1 : fit;
  return stay < 2 ? 0 : stay;
}

/** A paragraph that flows over pages where it must. */
export function paragraph(book: Book, text: string, block: TextBlock = {}): void {
  const { style = book.look.body, x = book.left, width = book.width, tag = "P", after = 8 } = block;
  let rest = book.lines(text, width, style);
  book.tags.open(tag);
  while (rest.length > 0) {
    const fresh = book.y <= book.top;
    const stay = linesThatStay(rest.length, book.room, style.leadingPt);
    if (stay === 0 && !fresh) {
      book.turnPage();
      continue;
    }
    const now = rest.slice(0, Math.max(1, stay));
    const { y } = book;
    book.tags.content(tag, () => setLines(book, now, x, y, style));
    book.y += now.length * style.leadingPt;
    rest = rest.slice(now.length);
  }
  book.tags.close();
  book.y += after;
}
