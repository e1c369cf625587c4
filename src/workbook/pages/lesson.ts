import type { AnswerFigure, Lesson, LessonView } from "../../answers/index.ts";
import { type Drawing, drawForLesson, placeLetter, withLetters } from "../../drawing/index.ts";
import { sumInFigures } from "../../figures/index.ts";
import type { Plan } from "../../plan/index.ts";
import { citeText } from "../../sources/index.ts";
import type { Book } from "../typeset/book.ts";
import { layFigure, setFigure } from "../typeset/figure.ts";
import { openPage } from "../typeset/heading.ts";
import { columns } from "../typeset/paper.ts";
import { paragraph, setLines } from "../typeset/paragraph.ts";
import { table } from "../typeset/table.ts";
import { painted, TYPE } from "../typeset/type-scale.ts";
import { cautionBand, cautionBandHeight } from "./caution-band.ts";

const LETTER_PT = 22;
const GAP = 8;
const LEAST_DRAWING_PT = 150;
const MOST_DRAWING_PT = 400;
/** Height of a row of figures: its line and the rule. */
const ROW_PT = 20;

/** One page for each lesson: its drawing with letters, what they are, its figures, and why. */
export function lessonPages(book: Book, plan: Plan, lessons: readonly Lesson[]): void {
  for (const lesson of lessons) lessonPage(book, plan, lesson);
}

function lessonPage(book: Book, plan: Plan, lesson: Lesson): void {
  const { title, question, views, figures, reason, cautions, cite } = lesson;
  openPage(book, { title, lead: question });
  const drawings = views.map((view) => letteredView(plan, lesson, view, firstLetter(views, view)));
  const words = views.flatMap(({ points }) => points).map(({ text }) => text);
  const source = `Source: ${citeText(cite)}.`;
  const textPt =
    words.reduce((sum, text) => sum + pointHeight(book, text), GAP) +
    figuresHeight(book, plan, figures) +
    paragraphHeight(book, reason, book.look.body) +
    paragraphHeight(book, source, book.look.small) +
    cautions.reduce((sum, caution) => sum + cautionBandHeight(book, caution), 0);
  const roomPt = Math.min(MOST_DRAWING_PT, Math.max(LEAST_DRAWING_PT, book.room - textPt - GAP));
  setDrawings(book, drawings, roomPt);
  setPoints(book, words);
  setFigures(book, plan, title, figures);
  paragraph(book, reason);
  for (const caution of cautions) cautionBand(book, caution);
  paragraph(book, source, { style: book.look.small });
}

function firstLetter(views: readonly LessonView[], view: LessonView): number {
  return views.slice(0, views.indexOf(view)).reduce((sum, { points }) => sum + points.length, 0);
}

/** Letters run on from view to view; the caption says only from where it is seen. */
function letteredView(
  plan: Plan,
  { shade }: Lesson,
  { sheet, raise, points }: LessonView,
  before: number,
): Drawing {
  const drawing = drawForLesson(sheet, plan, shade, raise);
  const [seen = ""] = /^[^.]*\./.exec(drawing.caption) ?? [];
  return withLetters(
    { ...drawing, caption: seen },
    points.map(({ part }) => part),
    before,
  );
}

function setDrawings(book: Book, drawings: readonly Drawing[], heightPt: number): void {
  const share = 12 / drawings.length;
  const captionPt = 2 * book.look.caption.leadingPt + 6;
  const laid = drawings.map((drawing) =>
    layFigure(book, drawing, columns(book.paper, 0, share).width, heightPt - captionPt),
  );
  const top = book.y;
  laid.forEach((one, i) => {
    setFigure(book, one, columns(book.paper, i * share, share).x, top);
  });
  book.y = top + Math.max(...laid.map((one) => one.heightPt)) + GAP;
}

function pointHeight(book: Book, text: string): number {
  return book.lines(text, book.width - LETTER_PT, book.look.body).length * book.look.body.leadingPt + 2;
}

function setPoints(book: Book, words: readonly string[]): void {
  const { body } = book.look;
  book.tags.within("L", () => {
    words.forEach((text, i) => {
      const lines = book.lines(text, book.width - LETTER_PT, body);
      book.need(lines.length * body.leadingPt);
      const { y } = book;
      book.tags.within("LI", () => {
        book.tags.mark("Lbl", () =>
          setLines(book, [placeLetter(i)], book.left, y, painted(TYPE.tableStrong, "accent")),
        );
        book.tags.mark("LBody", () => setLines(book, lines, book.left + LETTER_PT, y, body));
      });
      book.y = y + lines.length * body.leadingPt + 2;
    });
  });
  book.y += GAP;
}

/** Label, value and sum of a figure; where none has a sum the values have its room. */
function figureShares(figures: readonly AnswerFigure[], plan: Plan): number[] {
  return figures.some((figure) => sumOf(figure, plan) !== "") ? [2.2, 1.1, 2.3] : [1, 1.6];
}

function sumOf({ working }: AnswerFigure, plan: Plan): string {
  return working === undefined ? "" : (sumInFigures(working, plan.units) ?? "");
}

function figureRow(figure: AnswerFigure, plan: Plan): string[] {
  return [figure.label, figure.text, sumOf(figure, plan)];
}

function figuresHeight(book: Book, plan: Plan, figures: readonly AnswerFigure[]): number {
  if (figures.length === 0) return 0;
  const shares = figureShares(figures, plan);
  const whole = shares.reduce((sum, share) => sum + share, 0);
  const linesOf = (text: string, i: number) =>
    book.lines(text, (book.width * (shares[i] ?? 1)) / whole - 12, book.look.cellStrong).length;
  return figures.reduce((sum, figure) => {
    const most = Math.max(...figureRow(figure, plan).slice(0, shares.length).map(linesOf));
    return sum + ROW_PT + (most - 1) * book.look.cell.leadingPt;
  }, 2 * ROW_PT);
}

function setFigures(book: Book, plan: Plan, title: string, figures: readonly AnswerFigure[]): void {
  if (figures.length === 0) return;
  const shares = figureShares(figures, plan);
  const titles = ["What", "Comes to", "By"];
  table(book, {
    title: `Figures: ${title}`,
    columns: shares.map((share, i) => ({ title: titles[i] ?? "", share })),
    rows: figures.map((figure) =>
      figureRow(figure, plan)
        .slice(0, shares.length)
        .map((text, i) => ({ text, strong: i === 1, quiet: i === 2 })),
    ),
    after: GAP,
  });
}

function paragraphHeight(book: Book, text: string, style: Book["look"]["body"]): number {
  return book.lines(text, book.width, style).length * style.leadingPt + GAP;
}
