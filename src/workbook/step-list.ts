import { type Drawing, type Placed, type Primitive, place, type Role } from "../drawing/index.ts";
import type { Step } from "../shade/index.ts";
import type { Book } from "./book.ts";
import { drawPlaced } from "./draw-placed.ts";
import { altText } from "./figure.ts";
import { columns, mm, pt } from "./paper.ts";
import { firstBaseline, setLines } from "./paragraph.ts";
import { drawTickBox, TICK_BOX_PT } from "./tick-box.ts";
import { painted, type TextStyle, TYPE } from "./type-scale.ts";

const NUMBER_X = TICK_BOX_PT + 8;
const TEXT_X = TICK_BOX_PT + 30;
const STEP_GAP = 9;
const FIGURE_COLUMNS = 4;
const FIGURE_HEIGHT = 120;
const FIGURE_GAP = 14;

/** A step with the number it has in its workbook, and its drawing where one stands beside it. */
export interface NumberedStep {
  number: number;
  step: Step;
  drawing?: Drawing;
}

interface Line {
  words: string;
  style: TextStyle;
}

function linesOf(book: Book, step: Step, width: number): Line[] {
  const part = (words: string | undefined, style: TextStyle): Line[] =>
    words === undefined ? [] : book.lines(words, width, style).map((line) => ({ words: line, style }));
  return [
    ...part(step.title, TYPE.step),
    ...part(step.text, TYPE.body),
    ...part(step.check === undefined ? undefined : `Check: ${step.check}`, painted(TYPE.cellStrong, "woad")),
    ...part(
      step.caution === undefined ? undefined : `Take care: ${step.caution}`,
      painted(TYPE.cellStrong, "madder"),
    ),
  ];
}

/**
 * Steps with a box to tick at their left and drawings floating at their right: a drawing starts beside its
 * step and may reach down beside the next ones.
 */
export function stepList(book: Book, steps: readonly NumberedStep[]): void {
  const aside = columns(book.paper, 12 - FIGURE_COLUMNS, FIGURE_COLUMNS);
  const main = columns(book.paper, 0, 12 - FIGURE_COLUMNS);
  let figureEnd = 0;
  book.tags.open("L");
  for (const { number, step, drawing } of steps) {
    const lines = linesOf(book, step, main.width - TEXT_X - 6);
    const height = lines.reduce((sum, line) => sum + line.style.leadingPt, 0);
    const placed = drawing === undefined ? undefined : thumbnail(drawing, aside.width);
    const figureHeight = placed === undefined ? 0 : pt(placed.heightMm) + 4 + TYPE.caption.leadingPt;
    const page = book.pageCount;
    const figureTop = Math.max(book.y, figureEnd);
    book.need(Math.max(height, placed === undefined ? 0 : figureTop - book.y + figureHeight));
    if (book.pageCount !== page) figureEnd = 0;
    if (placed !== undefined) {
      const y = Math.max(book.y, figureEnd);
      setThumbnail(book, placed, aside.x, y);
      figureEnd = y + figureHeight + FIGURE_GAP;
    }
    setStep(book, number, lines, main.x);
  }
  book.tags.close();
  if (figureEnd > book.y) book.y = Math.min(figureEnd, book.bottom);
}

function setStep(book: Book, number: number, lines: readonly Line[], x: number): void {
  const { y } = book;
  book.tags.open("LI");
  book.tags.artifact(() => drawTickBox(book.pen, x, y + TYPE.step.leadingPt / 2));
  book.tags.mark("Lbl", () => setLines(book, [String(number)], x + NUMBER_X, y, painted(TYPE.step, "woad")));
  book.tags.open("LBody");
  let rest = lines;
  while (rest.length > 0) {
    const fit = countThatFit(book, rest);
    const now = rest.slice(0, fit);
    book.tags.content("LBody", () => {
      for (const line of now) {
        book.pen.text(line.words, x + TEXT_X, book.y + firstBaseline(line.style), line.style);
        book.y += line.style.leadingPt;
      }
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

/** Roles that only carry words: at the size of a thumbnail they would be a blur. */
const WORDS: ReadonlySet<Role> = new Set(["dimension", "leader", "note", "label"]);

function isShape({ kind, role }: Primitive): boolean {
  return kind !== "dimension" && kind !== "text" && kind !== "callout" && !WORDS.has(role);
}

/** The drawing without its figures and words, and without the tags of its cords. */
function thumbnail(drawing: Drawing, widthPt: number): Placed {
  const primitives = drawing.primitives.filter(
    (primitive) => isShape(primitive) && !(primitive.kind === "marker" && primitive.shape === "tag"),
  );
  return place({ ...drawing, primitives }, { maxWidthMm: mm(widthPt), maxHeightMm: mm(FIGURE_HEIGHT) });
}

function setThumbnail(book: Book, placed: Placed, x: number, y: number): void {
  const height = pt(placed.heightMm);
  book.tags.mark("Figure", () => drawPlaced(book.pen, placed, x, y), {
    alt: altText(placed),
    bbox: [x, y, x + pt(placed.widthMm), y + height],
  });
  book.tags.mark("Caption", () => setLines(book, [placed.title], x, y + height + 4, TYPE.caption));
}
