import { type Drawing, speltDrawing } from "../../drawing/index.ts";
import type { Step } from "../../shade-plan/index.ts";
import type { Book } from "./book.ts";
import { section } from "./heading.ts";
import { columns, type Span } from "./paper.ts";
import { setLines } from "./paragraph.ts";
import { type SmallFigure, setSmallFigure, smallFigure } from "./small-figure.ts";
import { drawTickBox, TICK_BOX_PT } from "./tick-box.ts";
import { firstBaseline, painted, type TextStyle, TYPE } from "./type-scale.ts";

const NUMBER_X = TICK_BOX_PT + 8;
const TEXT_X = TICK_BOX_PT + 30;
const STEP_GAP = 9;
const FIGURE_COLUMNS = 4;
const FIGURE_HEIGHT = 100;
const FIGURE_GAP = 8;

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
  /** Of the words, and of the drawing beside them; 0 without one. */
  heightPt: number;
  figure?: SmallFigure;
}

function layStep(book: Book, { number, step, drawing }: NumberedStep): LaidStep {
  const lines = linesOf(book, step, mainSpan(book).width - TEXT_X - 6);
  const heightPt = lines.reduce((sum, line) => sum + line.style.leadingPt, 0);
  if (drawing === undefined) return { number, lines, heightPt };
  const figure = smallFigure(speltDrawing(drawing, book.spell), asideSpan(book).width, FIGURE_HEIGHT, {
    textScale: book.look.drawingText,
  });
  return { number, lines, heightPt, figure };
}

function mainSpan(book: Book): Span {
  return columns(book.paper, 0, 12 - FIGURE_COLUMNS);
}

function asideSpan(book: Book): Span {
  return columns(book.paper, 12 - FIGURE_COLUMNS, FIGURE_COLUMNS);
}

function wholeHeight({ heightPt, figure }: LaidStep): number {
  return Math.max(heightPt, figure?.heightPt ?? 0);
}

/**
 * Steps under a heading, with a box to tick at their left and at their right what the hands do: a step and its drawing
 * begin level on one page, and the drawing may reach down beside steps that have none. The heading stays with its first
 * step.
 */
export function stepList(book: Book, heading: string, steps: readonly NumberedStep[]): void {
  const laid = steps.map((step) => layStep(book, step));
  const [first] = laid;
  section(book, heading, first === undefined ? 0 : wholeHeight(first));
  book.tags.open("L");
  let drawnTo = 0;
  for (const step of laid) {
    if (step.figure !== undefined) book.y = Math.max(book.y, drawnTo);
    const page = book.pageCount;
    book.need(wholeHeight(step));
    if (book.pageCount !== page) drawnTo = 0;
    if (step.figure !== undefined) drawnTo = book.y + step.figure.heightPt + FIGURE_GAP;
    setStep(book, step, mainSpan(book).x);
  }
  book.tags.close();
  book.y = Math.max(book.y, Math.min(drawnTo, book.bottom));
}

function setStep(book: Book, { number, lines, figure }: LaidStep, x: number): void {
  const { y } = book;
  book.tags.open("LI");
  book.tags.artifact(() => drawTickBox(book.pen, x, y + TYPE.step.leadingPt / 2));
  book.tags.mark("Lbl", () =>
    setLines(book, [String(number)], x + NUMBER_X, y, painted(TYPE.step, "accent")),
  );
  book.tags.open("LBody");
  if (figure !== undefined) setSmallFigure(book, figure, asideSpan(book).x, y);
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
