import type { Book } from "./book.ts";
import { setFormula } from "./formula-line.ts";
import { columns } from "./paper.ts";
import { linesThatStay, setLines } from "./paragraph.ts";
import { HAIRLINE, type Pen } from "./pen.ts";
import { firstBaseline, type TextStyle, TYPE } from "./type-scale.ts";

interface NotedText {
  words: string;
  style: TextStyle;
  /** Mathematics: indices and powers are set small. */
  formula?: boolean;
}

/** One entry of a list with a word at its left and text at its right. */
export interface Noted {
  /** Drawn before the word; `middleY` is the middle of the first line. */
  mark?: { widthPt: number; draw: (x: number, middleY: number) => void };
  word: string;
  wordStyle?: TextStyle;
  /** Paragraphs of text, each with its look. */
  text: readonly NotedText[];
}

const PAD = 5;
const SIDE_COLUMNS = 3;

type Line = NotedText;

/**
 * Entries under each other with a side column for their word: findings, cautions, settings.
 * An entry that fits on a page is never parted.
 */
export function notedList(book: Book, entries: readonly Noted[], after = 12): void {
  book.tags.open("L");
  entries.forEach((entry, i) => {
    setEntry(book, entry, i === entries.length - 1);
  });
  book.tags.close();
  book.y += after;
}

/** Height of the first entry, pt, as far as a page holds it: a heading over the list takes so much along. */
export function firstEntryHeight(book: Book, [first]: readonly Noted[]): number {
  return first === undefined ? 0 : Math.min(entryHeight(book, first), (book.bottom - book.top) / 2);
}

/** Height of one entry, pt. */
function entryHeight(book: Book, entry: Noted): number {
  return PAD * 2 + linesOf(book, entry).reduce((sum, line) => sum + line.style.leadingPt, 0);
}

function linesOf(book: Book, entry: Noted): Line[] {
  const { width } = columns(book.paper, SIDE_COLUMNS, 9);
  return entry.text.flatMap((part) =>
    book.lines(part.words, width, part.style).map((words) => ({ ...part, words })),
  );
}

function plainLine(pen: Pen, words: string, x: number, baselineY: number, style: TextStyle): void {
  pen.text(words, x, baselineY, style);
}

function setEntry(book: Book, entry: Noted, last: boolean): void {
  const side = columns(book.paper, 0, SIDE_COLUMNS);
  const main = columns(book.paper, SIDE_COLUMNS, 9);
  const wordStyle = entry.wordStyle ?? TYPE.strong;
  let rest = linesOf(book, entry);
  book.need(Math.min(entryHeight(book, entry), book.bottom - book.top));
  book.y += PAD;
  book.tags.open("LI");
  const { y, pageCount } = book;
  const { mark } = entry;
  const indent = mark?.widthPt ?? 0;
  if (mark) book.tags.artifact(() => mark.draw(side.x, y + (rest[0]?.style.leadingPt ?? 14) / 2));
  const word = book.lines(entry.word, side.width - indent, wordStyle);
  book.tags.mark("Lbl", () => setLines(book, word, side.x + indent, y, wordStyle));
  book.tags.open("LBody");
  while (rest.length > 0) {
    const stay = Math.max(
      1,
      linesThatStay(
        rest.map(({ style }) => style.leadingPt),
        book.room,
      ),
    );
    const now = rest.slice(0, stay);
    book.tags.content("LBody", () => {
      for (const line of now) {
        const set = line.formula === true ? setFormula : plainLine;
        set(book.pen, line.words, main.x, book.y + firstBaseline(line.style), line.style);
        book.y += line.style.leadingPt;
      }
    });
    rest = rest.slice(stay);
    if (rest.length > 0) book.turnPage();
  }
  book.tags.close();
  book.tags.close();
  // The word may reach further down than the text beside it, but only on the page on which both began.
  const wordEnd = book.pageCount === pageCount ? y + word.length * wordStyle.leadingPt : 0;
  book.y = Math.max(book.y, wordEnd) + PAD;
  if (!last) book.tags.artifact(() => book.pen.line(side.x, book.y, main.x + main.width, book.y, HAIRLINE));
}
