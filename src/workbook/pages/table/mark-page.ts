import { type Drawing, drawMarkingSheets } from "../../../drawing/index.ts";
import type { ShadePlan } from "../../../plan/index.ts";
import {
  type ClothMark,
  columnFromEdge,
  hemInWords,
  hemIsCurved,
  rowsAreDrawnUp,
  type ShapedPanel,
} from "../../../shade-plan/index.ts";
import { markMm, nearestMark, rulerText } from "../../../units/index.ts";
import type { ShadeContext } from "../../shade-context.ts";
import { figure, figureBeside } from "../../typeset/figure.ts";
import { openPage, type PageOpening } from "../../typeset/heading.ts";
import type { Span } from "../../typeset/paper.ts";
import { paragraph } from "../../typeset/paragraph.ts";
import { table, tableRow } from "../../typeset/table.ts";
import type { CellLike, TableSpec } from "../../typeset/table-spec.ts";
import { capital } from "../sentence.ts";

const FIGURE_COLUMNS = 5;
const LEAST_FIGURE_PT = 160;
const CAPTION_PT = 40;
/** A line of a table, as far as it takes to see what fits. */
const ROW_PT = 21;

/** Where every row and column is marked: from the hem up, from the left edge across, with sums to check by. */
export function markPage(context: ShadeContext): void {
  const { book, plan, shade } = context;
  const { existing } = shade;
  const { flat, finished } = drawMarkingSheets(plan, shade);
  const specs = existing === undefined ? [...ribLines(context), ...clothMarks(context)] : [];
  if (flat !== undefined && specs.length > 0) flatPage(context, flat, specs);
  openPage(book, marksOpening(shade));
  const split = { figureColumns: FIGURE_COLUMNS, maxHeight: book.room - 40 };
  figureBeside(book, finished, split, (right) => {
    rows(context, right);
    const { panel } = shade.form;
    if (panel === undefined) columnsTable(context, right);
    else columnsFromEdges(context, panel, right);
  });
}

function marksOpening(shade: ShadePlan): PageOpening {
  if (rowsAreDrawnUp(shade))
    return {
      title: "Drawn up",
      lead: "Where the rings come once the cloth is drawn up: to sew and to check by. The flat cloth is marked by the sheet before.",
    };
  return {
    title: "Mark",
    lead: `Measure every mark from the hem or from the edge, never from the mark before.${shade.existing === undefined ? "" : " Rings are sewn where a line says new; all others are there."}`,
  };
}

/** The flat cloth is marked before anything is sewn: on a sheet before the other, with its own drawing. */
function flatPage({ book }: ShadeContext, flat: Drawing, specs: readonly TableSpec[]): void {
  openPage(book, {
    title: "Mark the flat cloth",
    lead: "Hemmed and flat, before anything is pleated, tucked, gathered or given pockets. Measure from the hem or the edge, never from the mark before.",
  });
  const heights = specs.map(
    ({ rows, heading }) => (rows.length + (heading === undefined ? 1.5 : 3)) * ROW_PT,
  );
  const most = book.room - CAPTION_PT;
  if (heights.reduce((sum, height) => sum + height, 0) <= most) {
    figureBeside(book, flat, { figureColumns: FIGURE_COLUMNS, maxHeight: most }, (right) => {
      for (const spec of specs) table(book, { ...spec, ...right });
    });
    return;
  }
  // Too long to stand over each other: side by side, under the drawing.
  figure(book, flat, Math.max(LEAST_FIGURE_PT, most - Math.max(...heights) - CAPTION_PT));
  if (tableRow(book, specs)) return;
  for (const spec of specs) table(book, spec);
}

/** What is left of a whole, both rounded to the ruler: two figures of a line add up to it exactly. */
function restText({ plan }: ShadeContext, wholeMm: number, partMm: number): string {
  const { ruler } = plan.units;
  const marks = nearestMark(wholeMm, ruler) - nearestMark(partMm, ruler);
  return rulerText(marks * markMm(ruler), ruler);
}

function rows(context: ShadeContext, span: Span): void {
  const { book, shade, length } = context;
  const { grid, size } = shade;
  const whole = size.finishedLengthMm;
  const { existing } = shade;
  if (grid.rows.some(({ ends }) => ends !== undefined)) {
    slantingRows(context, span);
    return;
  }
  const list = [...grid.rows]
    .reverse()
    .map((row): CellLike[] => [
      `Row ${row.number}${newWord(existing?.newRows, row.number)}`,
      { text: length(row.fromHemMm), strong: true },
      restText(context, whole, row.fromHemMm),
    ]);
  table(book, {
    ...span,
    title: `Rows of rings, from ${hemInWords(shade.form)} up, the top row first as they lie`,
    columns: [
      { title: "", share: 1.1 },
      {
        title: hemIsCurved(shade.form) ? "From the lowest point" : "From the hem",
        share: 1.4,
        align: "measure",
      },
      { title: "to the top", share: 1, align: "measure" },
    ],
    rows: [["Top line", { text: length(whole), strong: true }, "0"], ...list],
    after: 2,
  });
  paragraph(book, `Check: both figures of a line add up to ${length(whole)}.`, { ...span, after: 10 });
}

/** `, new` beside what is sewn on a shade that hangs already. */
function newWord(added: readonly number[] | undefined, number: number): string {
  return added?.includes(number) === true ? ", new" : "";
}

/** Rows that slant: above the hem at either edge. */
function slantingRows({ book, shade, length }: ShadeContext, span: Span): void {
  const { grid, existing } = shade;
  table(book, {
    ...span,
    title: "Rows of rings, from the hem up at both edges seen from the room, the top row first as they lie",
    columns: [
      { title: "", share: 1.2 },
      { title: "At the left", share: 1.3, align: "measure" },
      { title: "at the right", share: 1.3, align: "measure" },
    ],
    rows: [...grid.rows]
      .reverse()
      .map(({ number, fromHemMm, ends }): CellLike[] => [
        `Row ${number}${newWord(existing?.newRows, number)}`,
        { text: length(ends?.leftFromHemMm ?? fromHemMm), strong: true },
        { text: length(ends?.rightFromHemMm ?? fromHemMm), strong: true },
      ]),
    after: 2,
  });
  paragraph(
    book,
    "Up from the hem right below, left and right as seen from the room. Join both marks by a line: the rings lie on it.",
    {
      ...span,
      after: 10,
    },
  );
}

/** Columns of a panel that widens: each by the edge beside it. */
function columnsFromEdges({ book, shade, length }: ShadeContext, panel: ShapedPanel, span: Span): void {
  table(book, {
    ...span,
    title: "Columns of rings, each from the edge beside it, edges named as seen from the room",
    columns: [
      { title: "", share: 1.1 },
      { title: "From the edge", share: 1.4, align: "measure" },
      { title: "beside it", share: 1 },
    ],
    rows: shade.grid.columns.map(({ number, xMm }): CellLike[] => {
      const { edge, mm } = columnFromEdge(shade, xMm);
      return [
        `Column ${number}${newWord(shade.existing?.newColumns, number)}`,
        { text: length(mm), strong: true },
        `on the ${edge}`,
      ];
    }),
    after: 2,
  });
  paragraph(
    book,
    `On every row, along the row: the flat cloth ${panel.taperMm > 0 ? `widens from ${length(shade.size.finishedWidthMm)} at the top to ${length(panel.hemWidthMm)} at the hem` : `is ${length(panel.hemWidthMm)} wide`}. From the back left and right change places.`,
    { ...span, after: 6 },
  );
}

function columnsTable(context: ShadeContext, span: Span): void {
  const { book, shade, length } = context;
  const { grid, size } = shade;
  const whole = size.finishedWidthMm;
  table(book, {
    ...span,
    title: "Columns of rings, from the left and from the right edge seen from the room",
    columns: [
      { title: "", share: 1.1 },
      { title: "From the left", share: 1.4, align: "measure" },
      { title: "to the right", share: 1, align: "measure" },
    ],
    rows: grid.columns.map((column): CellLike[] => [
      `Column ${column.number}${newWord(shade.existing?.newColumns, column.number)}`,
      { text: length(column.xMm), strong: true },
      restText(context, whole, column.xMm),
    ]),
    after: 2,
  });
  paragraph(
    book,
    `Check: both add up to ${length(whole)}. Left and right as seen from the room: from the back they change places.`,
    { ...span, after: 6 },
  );
}

function ribLines({ shade, length }: ShadeContext): TableSpec[] {
  const { ribLines: lines } = shade.cloth;
  if (lines.length === 0) return [];
  return [
    {
      title: "Lines of the rib pockets, before they are sewn",
      heading: "Rib pockets",
      columns: [
        { title: "Pocket", share: 1.4 },
        { title: "Line to mark, from the hem", share: 2, align: "measure" },
        { title: "On the finished shade", share: 2, align: "measure" },
      ],
      rows: lines.map((line, i): CellLike[] => [
        line.between ? `${i + 1}, above row ${line.row}` : `${i + 1}, row ${line.row}`,
        { text: length(line.onLiningMm), strong: true },
        length(line.fromHemMm),
      ]),
    },
  ];
}

/** Lines on the flat cloth, before pleats, tucks or gathers take any of it up: up from the hem, and across it. */
function clothMarks({ shade, length }: ShadeContext): TableSpec[] {
  const lists = [
    { along: "y", head: "From the hem" },
    { along: "x", head: "From the left edge" },
  ] as const;
  return lists.flatMap(({ along, head }): TableSpec[] => {
    const marks = shade.form.marks.filter((mark) => mark.along === along && !isOfPleat(mark));
    const pleats = along === "x" ? pleatLines(shade, length) : [];
    if (marks.length === 0) return pleats;
    return [
      ...pleats,
      {
        title: `Lines to mark on the flat face, hemmed, before anything is pleated, tucked or gathered: ${head.toLowerCase()}`,
        columns: [
          { title: "Flat, hemmed cloth", share: 1.8 },
          { title: head, share: 1.5, align: "measure" },
        ],
        rows: marks.map(({ label, atMm }): CellLike[] => [
          capital(label),
          { text: length(atMm), strong: true },
        ]),
      },
    ];
  });
}

function isOfPleat({ kind }: ClothMark): boolean {
  return kind === "pleat" || kind === "pleat-centre";
}

/** The three lines of a pleat stand beside each other, as they lie. */
function pleatLines({ form }: ShadePlan, length: ShadeContext["length"]): TableSpec[] {
  if (!form.marks.some(isOfPleat)) return [];
  return [
    {
      title: "Lines of the pleats on the flat face, hemmed, before they are folded: from its left edge",
      heading: "From the left edge",
      columns: [
        { title: "Pleat", share: 0.8 },
        { title: "Left", share: 1.2, align: "measure" },
        { title: "Middle", share: 1.2, align: "measure" },
        { title: "Right", share: 1.2, align: "measure" },
      ],
      rows: form.pleats.map(({ number, flatMm }): CellLike[] => [
        String(number),
        ...flatMm.map((mm) => ({ text: length(mm), strong: true })),
      ]),
    },
  ];
}
