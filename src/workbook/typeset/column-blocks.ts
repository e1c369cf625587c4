import type { Book } from "./book.ts";
import { columns, type Span } from "./paper.ts";
import { firstBaseline, type TextStyle, TYPE } from "./type-scale.ts";

/** A short text with a title over it, and perhaps a mark before the title and smaller words under the text. */
export interface TitledText {
  title: string;
  titleStyle?: TextStyle;
  mark?: { widthPt: number; draw: (x: number, middleY: number) => void };
  text: string;
  small?: string;
}

/** One laid out for a width: its height is known before it is set. */
export interface Block {
  item: TitledText;
  title: string[];
  text: string[];
  small: string[];
  heightPt: number;
}

const GAP = 7;
const TITLE = TYPE.cellStrong;
const TEXT = TYPE.note;
const SMALL = TYPE.small;

export function layBlocks(book: Book, items: readonly TitledText[], width: number): Block[] {
  return items.map((item) => {
    const indent = item.mark?.widthPt ?? 0;
    const title = book.lines(item.title, width - indent, item.titleStyle ?? TITLE);
    const text = book.lines(item.text, width, TEXT);
    const small = item.small === undefined ? [] : book.lines(item.small, width, SMALL);
    const heightPt =
      title.length * TITLE.leadingPt + text.length * TEXT.leadingPt + small.length * SMALL.leadingPt + GAP;
    return { item, title, text, small, heightPt };
  });
}

function heightOf(blocks: readonly Block[]): number {
  return blocks.reduce((sum, block) => sum + block.heightPt, 0);
}

/** How many blocks from the first on fit into so much height, pt. */
export function fittingBlocks(blocks: readonly Block[], room: number): number {
  let height = 0;
  let count = 0;
  for (const block of blocks) {
    height += block.heightPt;
    if (height - GAP > room + 0.01) break;
    count += 1;
  }
  return count;
}

/** Sets blocks under each other from `top`; gives the height at which they end. */
export function setBlocks(book: Book, blocks: readonly Block[], { x }: Span, top: number): number {
  let y = top;
  const set = (lines: readonly string[], style: TextStyle, indent = 0) => {
    for (const line of lines) {
      book.pen.text(line, x + indent, y + firstBaseline(style), style);
      y += style.leadingPt;
    }
  };
  for (const { item, title, text, small } of blocks) {
    const { mark, titleStyle = TITLE } = item;
    if (mark) book.tags.artifact(() => mark.draw(x, y + TITLE.leadingPt / 2));
    book.tags.mark("H4", () => set(title, titleStyle, mark?.widthPt));
    book.tags.mark("P", () => set(text, TEXT));
    if (small.length > 0) book.tags.mark("P", () => set(small, SMALL));
    y += GAP;
  }
  return y;
}

/** How many blocks go into the left column so that both end nearly level. */
function balance(blocks: readonly Block[]): number {
  const half = heightOf(blocks) / 2;
  let height = 0;
  let count = 0;
  for (const block of blocks) {
    if (count > 0 && height + block.heightPt / 2 > half) break;
    height += block.heightPt;
    count += 1;
  }
  return count;
}

/** Titled texts in two columns, read down the left one first; what does not fit goes on over the page. */
export function columnBlocks(book: Book, items: readonly TitledText[]): void {
  const left = columns(book.paper, 0, 6);
  const right = columns(book.paper, 6, 6);
  let rest = layBlocks(book, items, left.width);
  while (rest.length > 0) {
    const [inLeft, inRight] = share(rest, book.room);
    if (inLeft === 0 && book.y > book.top) {
      book.turnPage();
      continue;
    }
    // A block that is higher than a page is set all the same, rather than never.
    const taken = Math.max(1, inLeft);
    const top = book.y;
    const leftEnd = setBlocks(book, rest.slice(0, taken), left, top);
    const rightEnd = setBlocks(book, rest.slice(taken, taken + inRight), right, top);
    book.y = Math.max(leftEnd, rightEnd);
    rest = rest.slice(taken + inRight);
    if (rest.length > 0) book.turnPage();
  }
}

/** What goes over the page is never less than so many blocks, where as many stay. */
const LEAST_OVER = 4;

/** Level columns where all of it fits; else both filled, but for what keeps the next page from a line or two alone. */
function share(blocks: readonly Block[], room: number): [left: number, right: number] {
  const level = levelColumns(blocks, room);
  if (level !== undefined) return level;
  const left = fittingBlocks(blocks, room);
  const right = fittingBlocks(blocks.slice(left), room);
  const stay = Math.min(left + right, blocks.length - LEAST_OVER);
  if (stay === left + right || stay < LEAST_OVER) return [left, right];
  return levelColumns(blocks.slice(0, stay), room) ?? [Math.min(left, stay), Math.max(0, stay - left)];
}

function levelColumns(blocks: readonly Block[], room: number): [left: number, right: number] | undefined {
  const even = balance(blocks);
  const fits = (some: readonly Block[]) => fittingBlocks(some, room) === some.length;
  return fits(blocks.slice(0, even)) && fits(blocks.slice(even)) ? [even, blocks.length - even] : undefined;
}
