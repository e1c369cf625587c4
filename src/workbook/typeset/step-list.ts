import { type Drawing, speltDrawing } from "../../drawing/index.ts";
import type { Step } from "../../shade-plan/index.ts";
import type { Book } from "./book.ts";
import { SPACE_ABOVE, SPACE_BELOW } from "./heading.ts";
import { columns, type Span } from "./paper.ts";
import { setLines } from "./paragraph.ts";
import { type SmallFigure, setSmallFigure, smallFigure } from "./small-figure.ts";
import { type SheetSpace, StepColumns } from "./step-columns.ts";
import { drawTickBox, TICK_BOX_PT } from "./tick-box.ts";
import { firstBaseline, painted, type TextStyle, TYPE } from "./type-scale.ts";

const NUMBER_X = TICK_BOX_PT + 8;
const TITLE_X = TICK_BOX_PT + 27;
/** Words and drawing begin under the number. */
const TEXT_X = NUMBER_X;
const STEP_GAP = 7;
/** Lines of a step that stay together where it goes on in the next column. */
const KEPT_LINES = 4;
const COLUMNS = 2;
const FIGURE_WIDTH = 170;
/** Drawings are a little smaller where that saves a page. */
const FIGURE_HEIGHTS = [84, 74, 64] as const;
const FIGURE_GAP = 3;

/** A step with the number it has in its workbook, and its drawing where one stands under it. */
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
  /** Beside the number. */
  isTitle?: true;
}

/** Short lines need less room between them than those of a whole page. */
const LEADING_PT = 13;
const BODY: TextStyle = { ...TYPE.body, leadingPt: LEADING_PT };
const LEAD: TextStyle = { ...TYPE.strong, leadingPt: LEADING_PT };
const CHECK = { words: "Check: ", style: painted(LEAD, "accent") };
const CAUTION = { words: "Take care: ", style: painted(LEAD, "stop") };

/** The title in lines, then the words in lines of their own width. */
function linesOf(book: Book, step: Step, width: number): Line[] {
  const part = (words: string, style: TextStyle): Line[] =>
    book.lines(words, width, style).map((line) => ({ words: line, style }));
  const led = (lead: NonNullable<Line["lead"]>, words: string | undefined): Line[] => {
    if (words === undefined) return [];
    // The strong word is a little wider than the same in the text: that much is kept free.
    const spare = book.pen.widthOf(lead.words, lead.style) - book.pen.widthOf(lead.words, BODY);
    const [first = "", ...more] = book.lines(lead.words + words, width - spare, BODY);
    const rest = first.startsWith(lead.words) ? first.slice(lead.words.length) : first;
    return [{ words: rest, style: BODY, lead }, ...more.map((line) => ({ words: line, style: BODY }))];
  };
  return [
    ...book
      .lines(step.title, width - (TITLE_X - TEXT_X), TYPE.step)
      .map((words): Line => ({ words, style: TYPE.step, isTitle: true })),
    ...part(step.text, BODY),
    ...led(CHECK, step.check),
    ...led(CAUTION, step.caution),
  ];
}

/** @param x left edge of the column */
function setLine(book: Book, { words, style, lead, isTitle }: Line, x: number, y: number): void {
  const baseline = y + firstBaseline(style);
  let at = x + (isTitle === true ? TITLE_X : TEXT_X);
  if (lead !== undefined) {
    book.pen.text(lead.words, at, baseline, lead.style);
    at += book.pen.widthOf(lead.words, lead.style);
  }
  book.pen.text(words, at, baseline, style);
}

interface LaidStep {
  number: number;
  lines: Line[];
  /** Of the words, and of the drawing under them. */
  heightPt: number;
  figure?: SmallFigure;
}

function layStep(
  book: Book,
  { number, step, drawing }: NumberedStep,
  widthPt: number,
  figurePt: number,
): LaidStep {
  const textPt = widthPt - TEXT_X;
  const lines = linesOf(book, step, textPt);
  const wordsPt = lines.reduce((sum, line) => sum + line.style.leadingPt, 0);
  if (drawing === undefined) return { number, lines, heightPt: wordsPt };
  const figure = smallFigure(speltDrawing(drawing, book.spell), Math.min(FIGURE_WIDTH, textPt), figurePt, {
    textScale: book.look.drawingText,
  });
  return { number, lines, heightPt: wordsPt + FIGURE_GAP + figure.heightPt, figure };
}

/** Steps of one kind of work under one heading. */
export interface StepChapterList {
  heading: string;
  steps: readonly NumberedStep[];
}

interface LaidChapter {
  heading: string;
  steps: readonly LaidStep[];
}

/** Sets what stands in a column, or nothing where it is only measured; the column moves on by itself. */
interface Setter {
  heading(text: string, span: Span): void;
  begin(): void;
  beginStep(step: LaidStep, span: Span): void;
  lines(lines: readonly Line[], span: Span): void;
  figure(figure: SmallFigure, x: number, y: number): void;
  endStep(): void;
  end(): void;
}

/**
 * Chapters of steps in two columns, with a box to tick at the left of each step and under its words what the hands do. A
 * step stays whole on its page, and a heading with its first step.
 */
export function stepChapters(book: Book, chapters: readonly StepChapterList[]): void {
  const spans = Array.from({ length: COLUMNS }, (_, i) =>
    columns(book.paper, (i * 12) / COLUMNS, 12 / COLUMNS),
  );
  const [{ width } = { width: 0 }] = spans;
  const headingPt = book.look.section.leadingPt + SPACE_BELOW;
  const way = (figurePt: number) => {
    const laid = chapters.map(({ heading, steps }) => ({
      heading,
      steps: steps.map((step) => layStep(book, step, width, figurePt)),
    }));
    const into = new StepColumns(measureOf(book), spans);
    for (const chapter of laid) flow(into, chapter, headingPt, NOTHING);
    return { laid, into };
  };
  let best = way(FIGURE_HEIGHTS[0]);
  // Nothing is saved where the last page is well filled.
  for (const figurePt of best.into.isInFirst ? FIGURE_HEIGHTS.slice(1) : []) {
    const one = way(figurePt);
    if (one.into.pages < best.into.pages) best = one;
  }
  const into = new StepColumns(book, spans);
  for (const chapter of best.laid) flow(into, chapter, headingPt, setterOf(book));
}

function measureOf({ y, top, bottom }: Book): SheetSpace {
  return {
    y,
    top,
    bottom,
    turnPage() {
      this.y = this.top;
    },
  };
}

const nothing = () => {};
const NOTHING: Setter = {
  heading: nothing,
  begin: nothing,
  beginStep: nothing,
  lines: nothing,
  figure: nothing,
  endStep: nothing,
  end: nothing,
};

function flow(into: StepColumns, { heading, steps }: LaidChapter, headingPt: number, set: Setter): void {
  const [first] = steps;
  if (!into.isFresh) into.move(SPACE_ABOVE);
  if (first === undefined || !mayPart(first, into.sharedRoom - headingPt))
    into.need(headingPt + (first?.heightPt ?? 0));
  set.heading(heading, into.span);
  into.move(headingPt);
  set.begin();
  for (const step of steps) {
    if (!mayPart(step, into.sharedRoom)) into.need(step.heightPt);
    flowStep(into, step, set);
  }
  set.end();
}

/** Some lines of it at the foot of this column, and some at the head of the one beside it. */
function mayPart({ lines }: LaidStep, roomPt: number): boolean {
  const kept = lines.slice(0, KEPT_LINES).reduce((sum, { style }) => sum + style.leadingPt, 0);
  return lines.length >= 2 * KEPT_LINES && kept <= roomPt;
}

function flowStep(into: StepColumns, step: LaidStep, set: Setter): void {
  const { lines, figure } = step;
  set.beginStep(step, into.span);
  let rest = lines;
  while (rest.length > 0) {
    const fit = partedAt(rest, countThatFit(rest, into.room));
    const now = rest.slice(0, fit);
    set.lines(now, into.span);
    into.move(now.reduce((sum, { style }) => sum + style.leadingPt, 0));
    rest = rest.slice(fit);
    if (rest.length > 0) into.next();
  }
  if (figure !== undefined) {
    into.need(FIGURE_GAP + figure.heightPt);
    set.figure(figure, into.span.x + TEXT_X, into.y + FIGURE_GAP);
    into.move(FIGURE_GAP + figure.heightPt);
  }
  set.endStep();
  into.move(STEP_GAP);
}

function setterOf(book: Book): Setter {
  const { tags } = book;
  return {
    heading: (text, { x, width }) => {
      const { section } = book.look;
      tags.mark("H3", () => setLines(book, book.lines(text, width, section), x, book.y, section));
    },
    begin: () => tags.open("L"),
    beginStep: ({ number }, { x }) => {
      const { y } = book;
      tags.open("LI");
      tags.artifact(() => drawTickBox(book.pen, x, y + TYPE.step.leadingPt / 2));
      tags.mark("Lbl", () => setLines(book, [String(number)], x + NUMBER_X, y, painted(TYPE.step, "accent")));
      tags.open("LBody");
    },
    lines: (lines, { x }) => {
      let { y } = book;
      tags.content("LBody", () => {
        for (const line of lines) {
          setLine(book, line, x, y);
          y += line.style.leadingPt;
        }
      });
    },
    figure: (figure, x, y) => setSmallFigure(book, figure, x, y),
    endStep: () => {
      tags.close();
      tags.close();
    },
    end: () => tags.close(),
  };
}

/** Not so near to the end that less than what stays together goes on. */
function partedAt(lines: readonly Line[], fit: number): number {
  if (fit >= lines.length || lines.length < 2 * KEPT_LINES) return fit;
  return Math.min(fit, lines.length - KEPT_LINES);
}

function countThatFit(lines: readonly Line[], roomPt: number): number {
  let height = 0;
  let fit = 0;
  for (const line of lines) {
    height += line.style.leadingPt;
    if (height > roomPt + 0.01) break;
    fit += 1;
  }
  return Math.max(1, fit);
}
