import type { Drawing } from "../../drawing/index.ts";
import type { Step } from "../../shade-plan/index.ts";
import type { Book } from "./book.ts";
import { drawPlaced } from "./draw-placed.ts";
import { altText } from "./figure.ts";
import { section } from "./heading.ts";
import { columns, type Span } from "./paper.ts";
import { setLines } from "./paragraph.ts";
import { type Thumbnail, thumbnail } from "./thumbnail.ts";
import { drawTickBox, TICK_BOX_PT } from "./tick-box.ts";
import { firstBaseline, painted, type TextStyle, TYPE } from "./type-scale.ts";

const NUMBER_X = TICK_BOX_PT + 8;
const TEXT_X = TICK_BOX_PT + 30;
const STEP_GAP = 9;
const FIGURE_COLUMNS = 3;
const FIGURE_HEIGHT = 104;
const FIGURE_GAP = 14;
const CAPTION_GAP = 4;

/** A step with the number it has in its workbook, and its drawing where one stands beside it. */
export interface NumberedStep {
  number: number;
  step: Step;
  drawing?: Drawing;
}

interface Line {
  words: string;
  style: TextStyle;
  /** Set strong before the words: “Check:”. */
  lead?: { words: string; style: TextStyle };
}

const CHECK = { words: "Check: ", style: painted(TYPE.strong, "accent") };
const CAUTION = { words: "Take care: ", style: painted(TYPE.strong, "stop") };

function linesOf(book: Book, step: Step, width: number): Line[] {
  const part = (words: string, style: TextStyle): Line[] =>
    book.lines(words, width, style).map((line) => ({ words: line, style }));
  const led = (lead: NonNullable<Line["lead"]>, words: string | undefined): Line[] => {
    if (words === undefined) return [];
    // The strong word is a little wider than the same in the text: that much is kept free.
    const spare = book.pen.widthOf(lead.words, lead.style) - book.pen.widthOf(lead.words, TYPE.body);
    const [first = "", ...more] = book.lines(lead.words + words, width - spare, TYPE.body);
    const rest = first.startsWith(lead.words) ? first.slice(lead.words.length) : first;
    return [
      { words: rest, style: TYPE.body, lead },
      ...more.map((line) => ({ words: line, style: TYPE.body })),
    ];
  };
  return [
    ...part(step.title, TYPE.step),
    ...part(step.text, TYPE.body),
    ...led(CHECK, step.check),
    ...led(CAUTION, step.caution),
  ];
}

function setLine(book: Book, { words, style, lead }: Line, x: number): void {
  const baseline = book.y + firstBaseline(style);
  let at = x;
  if (lead !== undefined) {
    book.pen.text(lead.words, x, baseline, lead.style);
    at += book.pen.widthOf(lead.words, lead.style);
  }
  book.pen.text(words, at, baseline, style);
  book.y += style.leadingPt;
}

interface LaidStep {
  number: number;
  lines: Line[];
  heightPt: number;
  small?: Thumbnail;
  /** Of the drawing with its caption; 0 without one. */
  figurePt: number;
}

function layStep(book: Book, { number, step, drawing }: NumberedStep): LaidStep {
  const lines = linesOf(book, step, mainSpan(book).width - TEXT_X - 6);
  const heightPt = lines.reduce((sum, line) => sum + line.style.leadingPt, 0);
  if (drawing === undefined) return { number, lines, heightPt, figurePt: 0 };
  const small = thumbnail(drawing, asideSpan(book).width, FIGURE_HEIGHT);
  return { number, lines, heightPt, small, figurePt: small.heightPt + CAPTION_GAP + TYPE.caption.leadingPt };
}

function mainSpan(book: Book): Span {
  return columns(book.paper, 0, 12 - FIGURE_COLUMNS);
}

function asideSpan(book: Book): Span {
  return columns(book.paper, 12 - FIGURE_COLUMNS, FIGURE_COLUMNS);
}

/**
 * Steps under a heading, with a box to tick at their left and drawings floating at their right: a drawing
 * starts beside its step and may reach down beside the next ones. The heading stays with its first step.
 */
export function stepList(book: Book, heading: string, steps: readonly NumberedStep[]): void {
  const laid = steps.map((step) => layStep(book, step));
  const [first] = laid;
  section(book, heading, Math.max(first?.heightPt ?? 0, first?.figurePt ?? 0));
  let figureEnd = 0;
  book.tags.open("L");
  for (const step of laid) {
    const page = book.pageCount;
    const figureTop = Math.max(book.y, figureEnd);
    const reach = step.figurePt === 0 ? 0 : figureTop - book.y + step.figurePt;
    book.need(Math.max(step.heightPt, reach));
    if (book.pageCount !== page) figureEnd = 0;
    if (step.small !== undefined) {
      const y = Math.max(book.y, figureEnd);
      setThumbnail(book, step.small, asideSpan(book).x, y);
      figureEnd = y + step.figurePt + FIGURE_GAP;
    }
    setStep(book, step.number, step.lines, mainSpan(book).x);
  }
  book.tags.close();
  if (figureEnd > book.y) book.y = Math.min(figureEnd, book.bottom);
}

function setStep(book: Book, number: number, lines: readonly Line[], x: number): void {
  const { y } = book;
  book.tags.open("LI");
  book.tags.artifact(() => drawTickBox(book.pen, x, y + TYPE.step.leadingPt / 2));
  book.tags.mark("Lbl", () =>
    setLines(book, [String(number)], x + NUMBER_X, y, painted(TYPE.step, "accent")),
  );
  book.tags.open("LBody");
  let rest = lines;
  while (rest.length > 0) {
    const fit = countThatFit(book, rest);
    const now = rest.slice(0, fit);
    book.tags.content("LBody", () => {
      for (const line of now) setLine(book, line, x + TEXT_X);
    });
    rest = rest.slice(fit);
    if (rest.length > 0) book.turnPage();
  }
  book.tags.close();
  book.tags.close();
  book.y += STEP_GAP;
}

function countThatFit(book: Book, lines: readonly Line[]): number {
  let height = 0;
  let fit = 0;
  for (const line of lines) {
    height += line.style.leadingPt;
    if (height > book.room + 0.01) break;
    fit += 1;
  }
  return Math.max(1, fit);
}

function setThumbnail(book: Book, small: Thumbnail, x: number, y: number): void {
  const { placed, zoom, widthPt, heightPt } = small;
  book.tags.mark("Figure", () => drawPlaced(book.pen, placed, x, y, zoom), {
    alt: altText(placed),
    bbox: [x, y, x + widthPt, y + heightPt],
  });
  book.tags.mark("Caption", () =>
    setLines(book, [placed.title], x, y + heightPt + CAPTION_GAP, TYPE.caption),
  );
}
