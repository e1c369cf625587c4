import type { Book } from "./book.ts";
import { SECTION_ROOM_PT, SPACE_ABOVE, section } from "./heading.ts";
import { columns } from "./paper.ts";
import { setLines } from "./paragraph.ts";
import { HAIRLINE, RULE } from "./pen.ts";
import {
  CELL_GAP,
  type LaidRow,
  layRow,
  type PlacedColumn,
  setRow,
  tableColumns,
  widestCell,
} from "./table-rows.ts";
import type { TableSpec } from "./table-spec.ts";
import type { TextStyle } from "./type-scale.ts";

/** Tables up to this height are never parted. */
const KEEP_WHOLE_PT = 200;
/** Of a long table so many rows stay together at its end. */
const LAST_ROWS = 3;
const INTRO_GAP = 4;
const AFTER_PT = 14;

/** A table laid out for its place, its lines broken for its columns: its height is known before it is set. */
export interface LaidTable {
  spec: TableSpec;
  x: number;
  width: number;
  intro: string[];
  introStyle: TextStyle;
  head: LaidRow;
  rows: LaidRow[];
}

export function layTable(book: Book, spec: TableSpec): LaidTable {
  const { x = book.left, width = book.width } = spec;
  const columns = tableColumns(book, spec, x, width);
  const titles = spec.columns.map((column) => column.title);
  const rows = spec.rows.map((cells, i) => {
    const strong = spec.sum === true && i === spec.rows.length - 1;
    return layRow(book, columns, cells, strong ? book.look.cellStrong : book.look.cell, spec.rowHeightPt);
  });
  return {
    spec,
    x,
    width,
    intro: spec.intro === undefined ? [] : book.lines(spec.intro, width, book.look.small),
    introStyle: book.look.small,
    head: layRow(book, flushLeft(columns), titles, book.look.label),
    rows,
  };
}

/** Words over numbers begin where the column begins, except those flush right. */
function flushLeft(columns: readonly PlacedColumn[]): PlacedColumn[] {
  return columns.map((column) => (column.align === "measure" ? { ...column, align: "left" } : column));
}

function introHeight({ intro, introStyle }: LaidTable): number {
  return intro.length === 0 ? 0 : intro.length * introStyle.leadingPt + INTRO_GAP;
}

/** Height without the heading. */
function bodyHeight(laid: LaidTable, rows = laid.rows.length): number {
  const head = hasWords(laid.head) ? laid.head.heightPt : 0;
  return laid.rows.slice(0, rows).reduce((sum, row) => sum + row.heightPt, introHeight(laid) + head);
}

/** A small table stays whole; of a large one the head and two rows. */
function keptHeight(book: Book, laid: LaidTable): number {
  const whole = bodyHeight(laid);
  const isKept = laid.spec.whole === true && SECTION_ROOM_PT + whole <= book.bottom - book.top;
  return isKept || whole <= KEEP_WHOLE_PT ? whole : bodyHeight(laid, 2);
}

/** A table with quiet rules that flows over pages, its head repeated on each. */
export function table(book: Book, spec: TableSpec): void {
  flowTable(book, layTable(book, spec));
}

/** The same of one that is laid already. */
export function flowTable(book: Book, laid: LaidTable): void {
  const { spec } = laid;
  const span = spec.x === undefined ? undefined : { x: laid.x, width: laid.width };
  if (spec.heading !== undefined) section(book, spec.heading, keptHeight(book, laid), span);
  else book.need(keptHeight(book, laid));
  setTable(book, laid);
}

/** What a table takes of one page, with the heading over it and the white over that. */
export function tableHeight(laid: LaidTable): number {
  return (laid.spec.heading === undefined ? 0 : SPACE_ABOVE + SECTION_ROOM_PT) + bodyHeight(laid);
}

/** A table with columns just as wide as what is in them, its head aside, and the width that it takes so. */
function asNarrow(book: Book, spec: TableSpec): TableSpec & { width: number } {
  const widths = spec.columns.map((_, i) => widestCell(book, spec, i));
  const columns = spec.columns.map((column, i) => ({ ...column, share: widths[i] ?? 0 }));
  return { ...spec, columns, width: widths.reduce((sum, one) => sum + one, CELL_GAP * (widths.length - 1)) };
}

/**
 * Tables side by side from one height, each as wide as what is in it asks. Nothing is set, and false given, where they
 * are wider or higher than what is left of the page.
 */
export function tableRow(book: Book, specs: readonly TableSpec[]): boolean {
  const narrow = specs.map((spec) => asNarrow(book, spec));
  const spare = narrow.reduce((left, { width }) => left - width, book.width - CELL_GAP * (specs.length - 1));
  if (spare < 0) return false;
  let x = book.left;
  const laid = narrow.map((spec) => {
    const width = spec.width + spare / specs.length;
    const one = layTable(book, { ...spec, x, width });
    x += width + CELL_GAP;
    return [one];
  });
  if (halvesHeight(laid) > book.room) return false;
  setBeside(book, laid);
  return true;
}

function layHalves(book: Book, left: readonly TableSpec[], right: readonly TableSpec[]): LaidTable[][] {
  return [left, right].map((specs, i) =>
    specs.map((spec) => layTable(book, { ...spec, ...columns(book.paper, i * 6, 6) })),
  );
}

function halvesHeight(halves: readonly LaidTable[][]): number {
  const heights = halves.map((half) => half.reduce((sum, laid) => sum + standingHeight(laid), -AFTER_PT));
  return Math.max(...heights);
}

/** What tables in two halves of the page take of it, with the white over and under them, pt. */
export function besideHeight(book: Book, left: readonly TableSpec[], right: readonly TableSpec[]): number {
  return SPACE_ABOVE + halvesHeight(layHalves(book, left, right)) + AFTER_PT;
}

/** Tables in two halves of the page, those of a half under each other, both from one height. */
export function tablesBeside(book: Book, left: readonly TableSpec[], right: readonly TableSpec[]): void {
  const halves = layHalves(book, left, right);
  const height = halvesHeight(halves);
  if (height > book.bottom - book.top) {
    for (const spec of [...left, ...right]) table(book, spec);
    return;
  }
  book.need(SPACE_ABOVE + height);
  const top = book.y > book.top + 1 ? book.y + SPACE_ABOVE : book.y;
  book.y = top;
  setBeside(book, halves);
}

/** Each stack of tables from the height that the page has been filled to. */
function setBeside(book: Book, stacks: readonly LaidTable[][]): void {
  const top = book.y;
  const ends = stacks.map((stack) => {
    book.y = top;
    for (const laid of stack) {
      if (laid.spec.heading !== undefined) section(book, laid.spec.heading, 0, laid);
      setTable(book, laid);
    }
    return book.y;
  });
  book.y = Math.max(...ends);
}

/** Height with its heading and the space under it. */
function standingHeight(laid: LaidTable): number {
  const heading = laid.spec.heading === undefined ? 0 : SECTION_ROOM_PT;
  return heading + bodyHeight(laid) + (laid.spec.after ?? AFTER_PT);
}

function setTable(book: Book, laid: LaidTable): void {
  const { spec, x, width, head, rows, intro } = laid;
  if (intro.length > 0) {
    const { y } = book;
    book.tags.mark("P", () => setLines(book, intro, x, y, book.look.small));
    book.y += introHeight(laid);
  }
  book.tags.open("Table", { title: spec.title });
  drawHead(book, head, x, width, "TR");
  rows.forEach((row, i) => {
    const last = i === rows.length - 1;
    const next = rows
      .slice(i + 1, i + 1 + keptAfter(laid, i))
      .reduce((sum, { heightPt }) => sum + heightPt, 0);
    const couldFit = row.heightPt + next <= book.bottom - book.top - head.heightPt;
    if (couldFit && book.y + row.heightPt + next > book.bottom + 0.01) {
      book.turnPage();
      drawHead(book, head, x, width, "artifact");
    }
    if (spec.sum === true && last) {
      book.tags.artifact(() => book.pen.line(x, book.y, x + width, book.y, RULE));
    }
    drawRow(book, row, x, width, !last);
  });
  book.tags.close();
  book.y += spec.after ?? AFTER_PT;
}

/** How many rows after this one stay on its page: the last never stand at the head of a page with next to none. */
function keptAfter({ spec, rows }: LaidTable, i: number): number {
  const last = rows.length >= 2 * LAST_ROWS ? LAST_ROWS : 2;
  if (i > 0 && i === rows.length - last) return last - 1;
  return spec.leads?.has(i) === true ? 1 : 0;
}

function hasWords({ cells }: LaidRow): boolean {
  return cells.some((cell) => cell.lines.some((line) => line !== ""));
}

function drawHead(book: Book, head: LaidRow, x: number, width: number, as: "TR" | "artifact"): void {
  const y = book.y;
  if (hasWords(head)) {
    if (as === "TR") book.tags.within("TR", () => setRow(book, head, y, "TH"));
    else book.tags.artifact(() => setRow(book, head, y, "plain"));
    book.y += head.heightPt;
  }
  book.tags.artifact(() => book.pen.line(x, book.y, x + width, book.y, RULE));
}

/** A row higher than a page is set in pieces; every other row stays whole. */
function drawRow(book: Book, row: LaidRow, x: number, width: number, ruled: boolean): void {
  book.tags.open("TR");
  let rest = row;
  while (rest.heightPt > book.room) {
    const fit = Math.max(1, Math.floor((book.room - 2 * book.look.cellPadPt) / rest.leadingPt));
    const piece = part(rest, 0, fit, book.look.cellPadPt);
    setRow(book, piece, book.y, "TD");
    rest = part(rest, fit, Number.POSITIVE_INFINITY, book.look.cellPadPt);
    if (rest.cells.every((cell) => cell.lines.length === 0)) break;
    book.turnPage();
  }
  if (rest.cells.some((cell) => cell.lines.length > 0)) {
    setRow(book, rest, book.y, "TD");
    book.y += rest.heightPt;
  }
  book.tags.close();
  if (ruled) book.tags.artifact(() => book.pen.line(x, book.y, x + width, book.y, HAIRLINE));
}

function part(row: LaidRow, from: number, to: number, padPt: number): LaidRow {
  const cells = row.cells.map((cell) => ({ ...cell, lines: cell.lines.slice(from, to) }));
  const lines = Math.max(0, ...cells.map((cell) => cell.lines.length));
  return { ...row, cells, heightPt: lines * row.leadingPt + 2 * padPt };
}
