import type { AnswerFigure, Lesson, LessonView } from "../../answers/index.ts";
import { type Drawing, drawForLesson, placeLetter, withLetters } from "../../drawing/index.ts";
import { sumInFigures } from "../../figures/index.ts";
import type { Plan } from "../../plan/index.ts";
import { citeText } from "../../sources/index.ts";
import type { Book } from "../typeset/book.ts";
import { type LaidFigure, layFigure, setFigure } from "../typeset/figure.ts";
import { openPage } from "../typeset/heading.ts";
import { columns, type Span } from "../typeset/paper.ts";
import { paragraph, setLines } from "../typeset/paragraph.ts";
import { flowTable, layTable, tableHeight } from "../typeset/table.ts";
import type { TableSpec } from "../typeset/table-spec.ts";
import { painted, TYPE } from "../typeset/type-scale.ts";
import { cautionBand, cautionBandHeight } from "./caution-band.ts";

const LETTER_PT = 22;
const GAP = 8;
const LEAST_DRAWING_PT = 150;
/** Columns of the page that one drawing has where what its letters are stands beside it. */
const DRAWING_COLUMNS = 7;

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
  const shown = figures.length === 0 ? undefined : layTable(book, figureTable(plan, title, figures));
  const textPt =
    (shown === undefined ? 0 : tableHeight(shown) + GAP) +
    paragraphHeight(book, reason, book.look.body) +
    paragraphHeight(book, source, book.look.small) +
    cautions.reduce((sum, caution) => sum + cautionBandHeight(book, caution), 0);
  setViews(book, drawings, words, book.room - textPt);
  if (shown !== undefined) flowTable(book, shown);
  paragraph(book, reason);
  for (const caution of cautions) cautionBand(book, caution);
  paragraph(book, source, { style: book.look.small });
}

/** Drawings over their letters, or one that is high rather than wide beside them: as it is drawn larger. */
function setViews(book: Book, drawings: readonly Drawing[], words: readonly string[], roomPt: number): void {
  const page = { x: book.left, width: book.width };
  const underPt = pointsHeight(book, words, page.width);
  const over = layRow(book, drawings, 12 / drawings.length, roomPt - underPt);
  const right = columns(book.paper, DRAWING_COLUMNS, 12 - DRAWING_COLUMNS);
  const besidePt = pointsHeight(book, words, right.width);
  const beside =
    drawings.length === 1 && besidePt <= roomPt ? layRow(book, drawings, DRAWING_COLUMNS, roomPt) : over;
  const top = book.y;
  if (scaleOf(beside) > scaleOf(over)) {
    setRow(book, beside, DRAWING_COLUMNS, top);
    setPoints(book, words, right);
    book.y = Math.max(book.y, top + rowHeight(beside) + GAP);
    return;
  }
  setRow(book, over, 12 / drawings.length, top);
  book.y = top + rowHeight(over) + GAP;
  setPoints(book, words, page);
}

const scaleOf = ([first]: readonly LaidFigure[]) =>
  first === undefined ? 0 : first.placed.scale * first.zoom;

const rowHeight = (row: readonly LaidFigure[]) => Math.max(...row.map(({ heightPt }) => heightPt));

/** As large as their places allow; what their captions take is known once they are laid. */
function layRow(book: Book, drawings: readonly Drawing[], share: number, roomPt: number): LaidFigure[] {
  const { width } = columns(book.paper, 0, share);
  const heightPt = Math.max(LEAST_DRAWING_PT, roomPt - GAP);
  return drawings.map((drawing) => {
    const { heightPt: wholePt, drawnPt } = layFigure(book, drawing, width, heightPt);
    return layFigure(book, drawing, width, heightPt - (wholePt - drawnPt));
  });
}

function setRow(book: Book, row: readonly LaidFigure[], share: number, top: number): void {
  row.forEach((one, i) => {
    setFigure(book, one, columns(book.paper, i * share, share).x, top);
  });
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

function pointLines(book: Book, text: string, width: number): string[] {
  return book.lines(text, width - LETTER_PT, book.look.body);
}

function pointsHeight(book: Book, words: readonly string[], width: number): number {
  const { leadingPt } = book.look.body;
  return words.reduce((sum, text) => sum + pointLines(book, text, width).length * leadingPt + 2, GAP);
}

function setPoints(book: Book, words: readonly string[], { x, width }: Span): void {
  const { body } = book.look;
  book.tags.within("L", () => {
    words.forEach((text, i) => {
      const lines = pointLines(book, text, width);
      const { y } = book;
      book.tags.within("LI", () => {
        book.tags.mark("Lbl", () =>
          setLines(book, [placeLetter(i)], x, y, painted(TYPE.tableStrong, "accent")),
        );
        book.tags.mark("LBody", () => setLines(book, lines, x + LETTER_PT, y, body));
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

function figureTable(plan: Plan, title: string, figures: readonly AnswerFigure[]): TableSpec {
  const shares = figureShares(figures, plan);
  const titles = ["What", "Comes to", "By"];
  return {
    title: `Figures: ${title}`,
    columns: shares.map((share, i) => ({ title: titles[i] ?? "", share })),
    rows: figures.map((figure) =>
      figureRow(figure, plan)
        .slice(0, shares.length)
        .map((text, i) => ({ text, strong: i === 1, quiet: i === 2 })),
    ),
    after: GAP,
  };
}

function paragraphHeight(book: Book, text: string, style: Book["look"]["body"]): number {
  return book.lines(text, book.width, style).length * style.leadingPt + GAP;
}
