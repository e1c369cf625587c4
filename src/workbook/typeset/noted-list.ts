import type { Book } from "./book.ts";
import { setFormula } from "./formula-line.ts";
import { SPACE_ABOVE, SPACE_BELOW, section } from "./heading.ts";
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

/** White over and under an entry, pt. */
const PAD = 5;
/** The same where that saves a last page with little on it. */
const TIGHT_PADS = [4, 3, 2] as const;
/** A last page that holds less than this share of a page is one too many. */
const LEAST_LAST_PAGE = 0.3;
const AFTER_PT = 12;
const SIDE_COLUMNS = 3;

type Line = NotedText;

/**
 * Entries under each other with a side column for their word: findings, cautions, settings.
 * An entry that fits on a page is never parted.
 */
export function notedList(book: Book, entries: readonly Noted[], pad = PAD): void {
  book.tags.open("L");
  entries.forEach((entry, i) => {
    setEntry(book, entry, i === entries.length - 1, pad);
  });
  book.tags.close();
  book.y += AFTER_PT;
}

/** Entries that stand together, with a heading or without. */
export interface NotedGroup {
  heading?: string;
  entries: readonly Noted[];
}

/** Groups that end a sheaf: they stand a little closer where the last page would else hold but a few lines. */
export function notedGroups(book: Book, groups: readonly NotedGroup[]): void {
  const pad = padThatSaves(book, groups);
  for (const { heading, entries } of groups) {
    if (heading !== undefined) section(book, heading, firstEntryHeight(book, entries, pad));
    notedList(book, entries, pad);
  }
}

function padThatSaves(book: Book, groups: readonly NotedGroup[]): number {
  const heights = groups.map(({ entries }) => entries.map((entry) => setHeight(book, entry)));
  const usual = pagesTaken(book, groups, heights, PAD);
  const isFilled = usual.lastPt >= LEAST_LAST_PAGE * (book.bottom - book.top);
  if (usual.turns === 0 || isFilled) return PAD;
  return TIGHT_PADS.find((pad) => pagesTaken(book, groups, heights, pad).turns < usual.turns) ?? PAD;
}

/** How often the page is turned with this white about each entry, and how much of the last page is filled, pt. */
function pagesTaken(
  { y: startPt, top, bottom, look }: Book,
  groups: readonly NotedGroup[],
  heights: readonly (readonly number[])[],
  pad: number,
): { turns: number; lastPt: number } {
  let [y, turns] = [startPt, 0];
  const need = (heightPt: number) => {
    if (y <= top || y + heightPt <= bottom) return;
    y = top;
    turns += 1;
  };
  groups.forEach(({ heading }, g) => {
    const own = heights[g] ?? [];
    if (heading !== undefined) {
      const headingPt = SPACE_ABOVE + look.section.leadingPt + SPACE_BELOW;
      need(headingPt + (own[0] ?? 0) + 2 * pad);
      y += headingPt;
    }
    for (const heightPt of own) {
      need(heightPt + 2 * pad);
      y += heightPt + 2 * pad;
    }
    y += AFTER_PT;
  });
  return { turns, lastPt: y - top };
}

/** Height of the first entry, pt, as far as a page holds it: a heading over the list takes so much along. */
export function firstEntryHeight(book: Book, [first]: readonly Noted[], pad = PAD): number {
  return first === undefined ? 0 : Math.min(2 * pad + textHeight(book, first), (book.bottom - book.top) / 2);
}

/** Height of the text of an entry, pt. */
function textHeight(book: Book, entry: Noted): number {
  return linesOf(book, entry).reduce((sum, line) => sum + line.style.leadingPt, 0);
}

/** Height of its text or of the word beside it, whichever is the higher, pt. */
function setHeight(book: Book, entry: Noted): number {
  return Math.max(textHeight(book, entry), wordLines(book, entry).length * styleOf(entry).leadingPt);
}

const styleOf = ({ wordStyle = TYPE.strong }: Noted): TextStyle => wordStyle;

function wordLines(book: Book, entry: Noted): string[] {
  const { width } = columns(book.paper, 0, SIDE_COLUMNS);
  return book.lines(entry.word, width - (entry.mark?.widthPt ?? 0), styleOf(entry));
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

function setEntry(book: Book, entry: Noted, last: boolean, pad: number): void {
  const side = columns(book.paper, 0, SIDE_COLUMNS);
  const main = columns(book.paper, SIDE_COLUMNS, 9);
  const wordStyle = styleOf(entry);
  let rest = linesOf(book, entry);
  book.need(Math.min(2 * pad + textHeight(book, entry), book.bottom - book.top));
  book.y += pad;
  book.tags.open("LI");
  const { y, pageCount } = book;
  const { mark } = entry;
  const indent = mark?.widthPt ?? 0;
  if (mark) book.tags.artifact(() => mark.draw(side.x, y + (rest[0]?.style.leadingPt ?? 14) / 2));
  const word = wordLines(book, entry);
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
  book.y = Math.max(book.y, wordEnd) + pad;
  if (!last) book.tags.artifact(() => book.pen.line(side.x, book.y, main.x + main.width, book.y, HAIRLINE));
}
