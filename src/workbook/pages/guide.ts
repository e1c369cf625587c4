import { WEIGHTS } from "../../account/index.ts";
import { drawLegend } from "../../drawing/index.ts";
import { SHEETS } from "../../shade/index.ts";
import { type ContentsEntry, contentsList } from "../contents.ts";
import { figure } from "../figure.ts";
import { section } from "../heading.ts";
import { notedList } from "../noted-list.ts";
import type { ShadeContext } from "../shade-context.ts";
import { painted, TYPE } from "../type-scale.ts";
import { drawWeightMark, MARK_WIDTH, WEIGHT_MEANINGS, WEIGHT_PAINTS, WEIGHT_WORDS } from "../weight-mark.ts";

/** What is in the workbook, and how to read it. It follows the cautions, on the same page where there is room. */
export function guide(context: ShadeContext, entries: readonly ContentsEntry[]): void {
  const { book } = context;
  book.run({ chapter: "How to read this workbook" });
  if (book.y > book.top + 300) book.turnPage();
  section(book, "In this workbook", 140);
  contentsList(book, entries);
  legend(context);
  section(book, "Marks beside findings", 90);
  notedList(
    book,
    WEIGHTS.map((weight) => ({
      mark: { widthPt: MARK_WIDTH, draw: (x: number, y: number) => drawWeightMark(book.pen, weight, x, y) },
      word: WEIGHT_WORDS[weight],
      wordStyle: painted(TYPE.strong, WEIGHT_PAINTS[weight]),
      text: [{ words: WEIGHT_MEANINGS[weight], style: TYPE.cell }],
    })),
  );
}

const LEGEND_COLUMNS = 3;

/** Lines, tints and cords of this shade’s own drawings. */
function legend({ book, sheet }: ShadeContext): void {
  section(book, "In the drawings", 200);
  figure(
    book,
    drawLegend(
      SHEETS.map((kind) => sheet(kind)),
      LEGEND_COLUMNS,
    ),
    book.room,
  );
}
