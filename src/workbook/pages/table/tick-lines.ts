import { type Drawing, drawAction, speltDrawing } from "../../../drawing/index.ts";
import { CHAPTER_NAMES, type Step } from "../../../shade-plan/index.ts";
import type { ShadeContext } from "../../shade-context.ts";
import type { Book } from "../../typeset/book.ts";
import { columns, type Span } from "../../typeset/paper.ts";
import { setLines } from "../../typeset/paragraph.ts";
import { type SmallFigure, setSmallFigure, smallFigure } from "../../typeset/small-figure.ts";
import { drawTickBox, TICK_BOX_PT } from "../../typeset/tick-box.ts";
import { painted, type TextStyle, TYPE } from "../../typeset/type-scale.ts";

const NUMBER_X = TICK_BOX_PT + 5;
const TEXT_X = TICK_BOX_PT + 27;
const GAP = 5;
const HEADING = TYPE.tableSection;
const HEADING_GAP = 3;
/** Boxes of the drawings beside the lines, the largest that lets all of them stand on one page. */
const DRAWINGS_PT = [
  { width: 92, height: 58 },
  { width: 76, height: 46 },
  { width: 62, height: 36 },
];
type DrawingBox = (typeof DRAWINGS_PT)[number];
const DRAWING_GAP = 6;
/** Of the drawings beside the lines so many stay where that keeps all lines on a page. */
const LEAST_DRAWN = 0.5;

/** A thing to do or to look at: a box, perhaps its number, a line, and figures under it. */
export interface TickLine {
  /** Stands over it where its chapter begins. */
  heading?: string;
  number?: number;
  text: string;
  style: TextStyle;
  figures?: string;
  /** Set for the figures where words stand with them; else that of a figure alone. */
  figureStyle?: TextStyle;
  /** What the hands do, beside the line. */
  drawing?: Drawing;
}

interface LaidTick {
  tick: TickLine;
  lines: string[];
  figures: string[];
  figure?: SmallFigure;
  heightPt: number;
}

const styleOf = ({ figureStyle = TYPE.tableFigure }: TickLine): TextStyle => figureStyle;

function lay(book: Book, tick: TickLine, width: number, box: DrawingBox | undefined): LaidTick {
  const figure =
    tick.drawing === undefined || box === undefined
      ? undefined
      : smallFigure(speltDrawing(tick.drawing, book.spell), box.width, box.height, {
          textScale: 1,
          wordless: true,
        });
  const aside = figure === undefined || box === undefined ? 0 : box.width + DRAWING_GAP;
  const lines = book.lines(tick.text, width - TEXT_X - aside, tick.style);
  const figures =
    tick.figures === undefined ? [] : book.lines(tick.figures, width - TEXT_X - aside, styleOf(tick));
  const heading = tick.heading === undefined ? 0 : HEADING.leadingPt + HEADING_GAP;
  const words = lines.length * tick.style.leadingPt + figures.length * styleOf(tick).leadingPt;
  const heightPt = heading + Math.max(words, figure?.heightPt ?? 0) + GAP;
  return { tick, lines, figures, heightPt, ...(figure ? { figure } : {}) };
}

function set(book: Book, { tick, lines, figures, figure }: LaidTick, { x, width }: Span, top: number): void {
  const { style, number, heading } = tick;
  const y = heading === undefined ? top : top + HEADING.leadingPt + HEADING_GAP;
  book.tags.open("LI");
  book.tags.artifact(() => drawTickBox(book.pen, x, y + style.leadingPt / 2));
  if (number !== undefined)
    book.tags.mark("Lbl", () => setLines(book, [String(number)], x + NUMBER_X, y, painted(style, "accent")));
  book.tags.open("LBody");
  if (heading !== undefined)
    book.tags.mark("H3", () => setLines(book, [book.spell(heading)], x, top, HEADING));
  book.tags.mark("P", () => {
    const textX = number === undefined ? x + NUMBER_X + 2 : x + TEXT_X;
    setLines(book, lines, textX, y, style);
    setLines(book, figures, textX, y + lines.length * style.leadingPt, styleOf(tick));
  });
  if (figure !== undefined) setSmallFigure(book, figure, x + width - figure.widthPt, y);
  book.tags.close();
  book.tags.close();
}

/**
 * Ticks in two columns, read down the left one first; what does not fit goes on over the page. Their drawings are smaller
 * where that lets all of it, and what follows, stand on this page.
 *
 * @param followsPt height of what is to stand under them
 */
export function tickColumns(book: Book, ticks: readonly TickLine[], followsPt = 0): void {
  const spans = [columns(book.paper, 0, 6), columns(book.paper, 6, 6)];
  let rest = layToFit(book, ticks, followsPt);
  book.tags.open("L");
  while (rest.length > 0) {
    if (book.room < (rest[0]?.heightPt ?? 0) && book.y > book.top) book.turnPage();
    const top = book.y;
    const column = Math.min(book.room, evenHeight(rest));
    let end = top;
    for (const span of spans) {
      const taken = fitting(rest, column);
      end = Math.max(end, setColumn(book, rest.slice(0, taken), span, top));
      rest = rest.slice(taken);
    }
    book.y = end;
    if (rest.length > 0) book.turnPage();
  }
  book.tags.close();
}

/** Height of ticks that stand in two columns, pt. */
export function tickHeight(book: Book, ticks: readonly TickLine[]): number {
  return evenHeight(layToFit(book, ticks, 0));
}

function layToFit(book: Book, ticks: readonly TickLine[], followsPt: number): LaidTick[] {
  const { width } = columns(book.paper, 0, 6);
  // A column may reach over by the white under its last line.
  const fits = (all: readonly LaidTick[]) => evenHeight(all) + GAP + followsPt <= book.room;
  const laid: LaidTick[][] = [];
  for (const box of DRAWINGS_PT) {
    const all = ticks.map((tick) => lay(book, tick, width, box));
    if (fits(all)) return all;
    laid.push(all);
  }
  const wordsAlone = ticks.map((tick) => lay(book, tick, width, undefined));
  // The last words about a shade are worth more than all drawings, which “Step by step” has too.
  const least = followsPt > 0 ? 0 : LEAST_DRAWN * ticks.filter(({ drawing }) => drawing !== undefined).length;
  return withFewerDrawings(laid.at(-1) ?? [], wordsAlone, least, fits) ?? laid[0] ?? [];
}

/** Left without the drawings that are highest over their words, one after the other, until all of it fits. */
function withFewerDrawings(
  laid: readonly LaidTick[],
  wordsAlone: readonly LaidTick[],
  leastDrawn: number,
  fits: (all: readonly LaidTick[]) => boolean,
): LaidTick[] | undefined {
  const over = (i: number) => (laid[i]?.heightPt ?? 0) - (wordsAlone[i]?.heightPt ?? 0);
  const drawn = laid.flatMap(({ figure }, i) => (figure === undefined ? [] : [i]));
  const some = [...laid];
  for (const [left, i] of drawn.sort((a, b) => over(b) - over(a)).entries()) {
    if (drawn.length - left <= leastDrawn) return undefined;
    some[i] = wordsAlone[i] as LaidTick;
    if (fits(some)) return some;
  }
  return undefined;
}

/** The least height of two columns that hold all of it between them. */
function evenHeight(all: readonly LaidTick[]): number {
  const total = all.reduce((sum, { heightPt }) => sum + heightPt, 0);
  let before = 0;
  let least = total;
  for (const { heightPt } of all) {
    before += heightPt;
    least = Math.min(least, Math.max(before, total - before));
  }
  return least;
}

function fitting(all: readonly LaidTick[], room: number): number {
  let height = 0;
  let count = 0;
  for (const { heightPt } of all) {
    height += heightPt;
    if (height - GAP > room + 0.01) break;
    count += 1;
  }
  return Math.min(all.length, Math.max(1, count));
}

function setColumn(book: Book, all: readonly LaidTick[], span: Span, top: number): number {
  let y = top;
  for (const one of all) {
    set(book, one, span, y);
    y += one.heightPt;
  }
  return y;
}

const MEASURES = {
  imperial: /(?:\d+[\u00a0 ])?(?:\d+⁄\d+|\d+)[\u00a0 ]in(?![\p{L}\d])/gu,
  metric: /\d+(?:[.,]\d+)?[\u00a0 ](?:mm|cm|m)(?![\p{L}\d])/gu,
};

/** Names of what is bought: figures in them are no measures of this shade. */
function namesIn({ shade }: ShadeContext): string[] {
  const { cloth, board, lift } = shade;
  const names = [
    ...cloth.layers.map(({ clothName }) => clothName),
    ...cloth.trims.map(({ clothName }) => clothName),
    board.sectionName,
    board.barName ?? "",
    lift.cordName,
    ...shade.cost.shopping.map(({ label }) => label),
  ];
  return names.filter((name) => name !== "").sort((a, b) => b.length - a.length);
}

/** The one length that stands in the words of a step: several say nothing without words. */
function figureOf({ plan }: ShadeContext, { text }: Step, names: readonly string[]): string | undefined {
  const plain = names.reduce((words, name) => words.replaceAll(name, ""), text);
  const found = [...new Set(plain.match(MEASURES[plan.units.system]) ?? [])];
  return found.length === 1 ? found[0] : undefined;
}

/** Steps by their title and figures alone, with the numbers that they have step by step. */
export function stepTicks(context: ShadeContext, chapters: readonly Step["chapter"][]): TickLine[] {
  const names = namesIn(context);
  let last: Step["chapter"] | undefined;
  return context.shade.steps.flatMap((step, i): TickLine[] => {
    if (!chapters.includes(step.chapter)) return [];
    const heading = step.chapter === last ? {} : { heading: CHAPTER_NAMES[step.chapter] };
    last = step.chapter;
    const drawing = step.action === undefined ? undefined : drawAction(step.action, context.plan.units);
    const figures = step.brief ?? figureOf(context, step, names);
    return [
      {
        number: i + 1,
        text: step.title,
        style: TYPE.tableStrong,
        ...heading,
        ...(figures ? { figures } : {}),
        ...(step.brief === undefined ? {} : { figureStyle: TYPE.tableBody }),
        ...(drawing ? { drawing } : {}),
      },
    ];
  });
}
