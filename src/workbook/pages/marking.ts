import type { ShadeContext } from "../shade-context.ts";
import { figureBeside } from "../typeset/figure.ts";
import { type ChapterHead, openChapter } from "../typeset/heading.ts";
import type { Span } from "../typeset/paper.ts";
import { paragraph } from "../typeset/paragraph.ts";
import { table } from "../typeset/table.ts";
import type { CellLike } from "../typeset/table-spec.ts";
import { TYPE } from "../typeset/type-scale.ts";
import { capital } from "./sentence.ts";

/** Where every row and column is marked: from the hem up, from the left edge across. */
export function markingPage(context: ShadeContext, head: ChapterHead): void {
  const { book } = context;
  openChapter(book, {
    ...head,
    lead: "Mark from the finished hem up and from the left finished edge across. Every figure is counted from there, none from the mark before.",
  });
  const split = { figureColumns: 7, maxHeight: book.room - 30 };
  figureBeside(book, context.sheet("marking"), split, (right) => {
    rows(context, right);
    columnsTable(context, right);
  });
  ribLines(context);
  clothMarks(context);
}

function rows({ book, shade, length }: ShadeContext, span: Span): void {
  const { grid, size } = shade;
  const list = grid.rows.map((row): CellLike[] => [
    { text: `Row ${row.number}`, strong: true },
    { text: length(row.fromHemMm), strong: true },
    length(row.yMm),
  ]);
  table(book, {
    ...span,
    title: "Rows of rings, from the hem up",
    heading: "Rows, from the hem up",
    columns: [
      { title: "", share: 1 },
      { title: "From the hem", share: 1.2, align: "measure" },
      { title: "Below the board", share: 1.2, align: "measure" },
    ],
    rows: [
      ...list,
      [{ text: "Top line", strong: true }, { text: length(size.finishedLengthMm), strong: true }, length(0)],
    ],
  });
}

function columnsTable({ book, shade, length }: ShadeContext, span: Span): void {
  const { grid, size } = shade;
  table(book, {
    ...span,
    title: "Columns of rings, from the left and from the right edge seen from the room",
    heading: "Columns, from the edge",
    columns: [
      { title: "", share: 1 },
      { title: "From the left", share: 1.2, align: "measure" },
      { title: "From the right", share: 1.2, align: "measure" },
    ],
    rows: grid.columns.map((column): CellLike[] => [
      { text: `Column ${column.number}`, strong: true },
      { text: length(column.xMm), strong: true },
      length(size.finishedWidthMm - column.xMm),
    ]),
    after: 6,
  });
  paragraph(book, "Left and right as seen from the room. From the back they change places.", {
    ...span,
    style: TYPE.small,
  });
}

function ribLines({ book, shade, length }: ShadeContext): void {
  const { ribLines: lines } = shade.cloth;
  if (lines.length === 0) return;
  table(book, {
    title: "Lines of the rib pockets, before they are sewn",
    heading: "Rib pockets",
    columns: [
      { title: "Pocket", share: 1.4 },
      { title: "Line to mark, from the hem", share: 2, align: "measure" },
      { title: "On the finished shade", share: 2, align: "measure" },
    ],
    rows: lines.map((line, i): CellLike[] => [
      {
        text: line.between ? `${i + 1}, above row ${line.row}` : `${i + 1}, row ${line.row}`,
        strong: true,
      },
      { text: length(line.onLiningMm), strong: true },
      length(line.fromHemMm),
    ]),
  });
}

/** Lines on the flat cloth, before pleats, tucks or gathers take any of it up. */
function clothMarks({ book, shade, length }: ShadeContext): void {
  const { marks } = shade.form;
  if (marks.length === 0) return;
  table(book, {
    title: "Lines to mark on the flat face, hemmed, before anything is pleated, tucked or gathered",
    heading: "The flat cloth",
    columns: [
      { title: "", share: 1.6 },
      { title: "From the hem", share: 1.6, align: "measure" },
      { title: "From the left edge", share: 1.6, align: "measure" },
    ],
    rows: marks.map(({ label, along, atMm }): CellLike[] => [
      { text: capital(label), strong: true },
      along === "y" ? { text: length(atMm), strong: true } : "",
      along === "x" ? { text: length(atMm), strong: true } : "",
    ]),
  });
}
