import type { Book } from "./book.ts";
import { columns, type Span } from "./paper.ts";
import { firstBaseline } from "./paragraph.ts";
import { TYPE } from "./type-scale.ts";

/** A short text with a title over it. */
export interface TitledText {
  title: string;
  text: string;
}

interface Block {
  title: string[];
  text: string[];
  heightPt: number;
}

const GAP = 7;
const TITLE = TYPE.cellStrong;
const TEXT = TYPE.note;

function spans(book: Book): [Span, Span] {
  return [columns(book.paper, 0, 6), columns(book.paper, 6, 6)];
}

function lay(book: Book, items: readonly TitledText[]): Block[] {
  const { width } = spans(book)[0];
  return items.map((item) => {
    const title = book.lines(item.title, width, TITLE);
    const text = book.lines(item.text, width, TEXT);
    return { title, text, heightPt: title.length * TITLE.leadingPt + text.length * TEXT.leadingPt + GAP };
  });
}

function heightOf(blocks: readonly Block[]): number {
  return blocks.reduce((sum, block) => sum + block.heightPt, 0);
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

function fitting(blocks: readonly Block[], room: number): number {
  let height = 0;
  let count = 0;
  for (const block of blocks) {
    height += block.heightPt;
    if (height - GAP > room + 0.01) break;
    count += 1;
  }
  return count;
}

/** Height that the blocks take when they stand in two level columns. */
export function columnBlocksHeight(book: Book, items: readonly TitledText[]): number {
  const blocks = lay(book, items);
  const left = balance(blocks);
  return Math.max(heightOf(blocks.slice(0, left)), heightOf(blocks.slice(left)));
}

/** Titled texts in two columns, read down the left one first; what does not fit goes on over the page. */
export function columnBlocks(book: Book, items: readonly TitledText[]): void {
  let rest = lay(book, items);
  while (rest.length > 0) {
    const { room } = book;
    const even = balance(rest);
    const whole = heightOf(rest.slice(0, even)) - GAP <= room && heightOf(rest.slice(even)) - GAP <= room;
    const left = whole ? even : fitting(rest, room);
    const right = whole ? rest.length - even : fitting(rest.slice(left), room);
    if (left === 0 && book.y > book.top) {
      book.turnPage();
      continue;
    }
    const taken = Math.max(1, left);
    const top = book.y;
    const [leftSpan, rightSpan] = spans(book);
    const leftEnd = setColumn(book, rest.slice(0, taken), leftSpan, top);
    const rightEnd = setColumn(book, rest.slice(taken, taken + right), rightSpan, top);
    book.y = Math.max(leftEnd, rightEnd);
    rest = rest.slice(taken + right);
    if (rest.length > 0) book.turnPage();
  }
}

function setColumn(book: Book, blocks: readonly Block[], { x }: Span, top: number): number {
  let y = top;
  const set = (lines: readonly string[], style: typeof TITLE | typeof TEXT) => {
    for (const line of lines) {
      book.pen.text(line, x, y + firstBaseline(style), style);
      y += style.leadingPt;
    }
  };
  for (const { title, text } of blocks) {
    book.tags.mark("H4", () => set(title, TITLE));
    book.tags.mark("P", () => set(text, TEXT));
    y += GAP;
  }
  return y;
}
