import type { Book } from "./book.ts";
import { columns } from "./paper.ts";
import { setLines } from "./paragraph.ts";
import { HAIRLINE } from "./pen.ts";
import { drawTickBox, TICK_BOX_PT } from "./tick-box.ts";
import { TYPE } from "./type-scale.ts";

/** A test for hands and weights, with what it decides. */
export interface TestToDo {
  title: string;
  text: string;
  decides: string;
}

const TEXT_X = TICK_BOX_PT + 10;
const GAP = 12;
/** Room for a line of handwriting. */
const WRITING_PT = 22;
const WRITE_IN = [
  [["What was found", 0, 12]],
  [
    ["By whom", 0, 7],
    ["Date", 7, 5],
  ],
] as const;

/** Tests under each other: a box to tick, what to do, and lines to write down what came of it. None is parted. */
export function testList(book: Book, tests: readonly TestToDo[]): void {
  book.tags.open("L");
  for (const test of tests) setTest(book, test);
  book.tags.close();
}

function setTest(book: Book, { title, text, decides }: TestToDo): void {
  const x = book.left + TEXT_X;
  const width = book.width - TEXT_X;
  const parts = [
    { lines: book.lines(title, width, TYPE.step), style: TYPE.step },
    { lines: book.lines(text, width, TYPE.body), style: TYPE.body },
    { lines: book.lines(decides, width, TYPE.small), style: TYPE.small },
  ];
  const words = parts.reduce((sum, { lines, style }) => sum + lines.length * style.leadingPt, 0);
  book.need(words + WRITE_IN.length * WRITING_PT + GAP);
  book.tags.open("LI");
  const { y } = book;
  book.tags.artifact(() => drawTickBox(book.pen, book.left, y + TYPE.step.leadingPt / 2));
  book.tags.mark("LBody", () => {
    for (const { lines, style } of parts) {
      setLines(book, lines, x, book.y, style);
      book.y += lines.length * style.leadingPt;
    }
    for (const row of WRITE_IN) writeIn(book, row);
  });
  book.tags.close();
  book.y += GAP;
}

function writeIn(book: Book, row: readonly (readonly [word: string, first: number, count: number])[]): void {
  const baseline = book.y + WRITING_PT - 4;
  for (const [word, first, count] of row) {
    const place = columns(book.paper, first, count);
    const from = first === 0 ? place.x + TEXT_X : place.x;
    book.pen.text(word, from, baseline, TYPE.small);
    const end = from + book.pen.widthOf(word, TYPE.small) + 6;
    book.pen.line(end, baseline + 2, place.x + place.width, baseline + 2, HAIRLINE);
  }
  book.y += WRITING_PT;
}
