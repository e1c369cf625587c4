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

/** How many lines of these leadings go on this page: never one alone at the foot or at the head of the next. */
export function linesThatStay(leadingsPt: readonly number[], room: number): number {
  let height = 0;
  let fit = 0;
  for (const leadingPt of leadingsPt) {
    height += leadingPt;
    if (height > room + 0.01) break;
    fit += 1;
  }
  if (fit === leadingsPt.length) return fit;
  const stay = leadingsPt.length - fit === 1 ? fit - 1 : fit;
  return stay < 2 ? 0 : stay;
}

/** What short paragraphs take under each other, each with so much white under it, pt. */
export function paragraphsHeight(book: Book, texts: readonly string[], width: number, after: number): number {
  const { body } = book.look;
  return texts.reduce((sum, text) => sum + book.lines(text, width, body).length * body.leadingPt + after, 0);
}

/** A paragraph that flows over pages where it must. */
export function paragraph(book: Book, text: string, block: TextBlock = {}): void {
  const { style = book.look.body, x = book.left, width = book.width, tag = "P", after = 8 } = block;
  let rest = book.lines(text, width, style);
  book.tags.open(tag);
  while (rest.length > 0) {
    const fresh = book.y <= book.top;
    const stay = linesThatStay(
      rest.map(() => style.leadingPt),
      book.room,
    );
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
