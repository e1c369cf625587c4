import { drawLegend } from "../../drawing/index.ts";
import { SEVERITIES, SEVERITY_WORDS } from "../../figures/index.ts";
import { LINE_SHEETS } from "../../shade-plan/index.ts";
import type { Book } from "../book.ts";
import { type ContentsEntry, contentsList } from "../contents.ts";
import { figure } from "../figure.ts";
import { section } from "../heading.ts";
import { columns } from "../paper.ts";
import { setLines } from "../paragraph.ts";
import { drawSeverityMark, MARK_WIDTH, SEVERITY_MEANINGS, SEVERITY_PAINTS } from "../severity-mark.ts";
import type { ShadeContext } from "../shade-context.ts";
import { painted, TYPE } from "../type-scale.ts";

/** What is in the workbook, and how to read it. It follows the cautions, on the same page where there is room. */
export function guide(context: ShadeContext, entries: readonly ContentsEntry[]): void {
  const { book } = context;
  book.run({ chapter: "How to read this workbook" });
  if (book.y > book.top + 300) book.turnPage();
  section(book, "In this workbook", 140);
  contentsList(book, entries);
  marks(book);
  legend(context);
}

/** The four marks of findings, side by side. */
function marks(book: Book): void {
  section(book, "Marks beside findings", 60);
  const top = book.y;
  const word = TYPE.strong;
  const ends = SEVERITIES.map((severity, i) => {
    const { x, width } = columns(book.paper, i * 3, 3);
    book.tags.artifact(() => drawSeverityMark(book.pen, severity, x, top + word.leadingPt / 2));
    const name = [SEVERITY_WORDS[severity]];
    book.tags.mark("H4", () =>
      setLines(book, name, x + MARK_WIDTH, top, painted(word, SEVERITY_PAINTS[severity])),
    );
    const meaning = book.lines(SEVERITY_MEANINGS[severity], width, TYPE.note);
    const under = top + word.leadingPt + 2;
    book.tags.mark("P", () => setLines(book, meaning, x, under, TYPE.note));
    return under + meaning.length * TYPE.note.leadingPt;
  });
  book.y = Math.max(...ends) + 14;
}

const LEGEND_COLUMNS = 3;
const LEAST_LEGEND_PT = 230;
const CAPTION_PT = 20;

/** Lines, tints and cords of this shade’s own drawings. */
function legend({ book, sheet }: ShadeContext): void {
  section(book, "In the drawings", LEAST_LEGEND_PT);
  const drawings = LINE_SHEETS.map((kind) => sheet(kind));
  figure(book, drawLegend(drawings, LEGEND_COLUMNS), book.room - CAPTION_PT);
}
