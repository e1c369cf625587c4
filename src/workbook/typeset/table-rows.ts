import type { Book } from "./book.ts";
import type { Align, CellLike, TableSpec } from "./table-spec.ts";
import { firstBaseline, type TextStyle } from "./type-scale.ts";

/** Between two columns, pt. */
export const CELL_GAP = 12;

/** A column with its place on the page; `axisPt` is where whole numbers end. */
export interface PlacedColumn {
  x: number;
  width: number;
  align: Align;
  axisPt: number;
}

interface LaidCell {
  column: PlacedColumn;
  lines: string[];
  style: TextStyle;
  indentPt: number;
  sign?: (x: number, middleY: number) => void;
}

export interface LaidRow {
  cells: LaidCell[];
  heightPt: number;
  leadingPt: number;
}

/** `35 3⁄8 in` into what stands before the axis and what hangs after it. */
export function splitMeasure(text: string): [whole: string, rest: string] {
  const whole = /^[−-]?[\d  ]*\d(?![\d⁄])/u.exec(text)?.[0] ?? "";
  return [whole, text.slice(whole.length)];
}

function textOf(cell: CellLike | undefined): string {
  return cell === undefined ? "" : typeof cell === "string" ? cell : cell.text;
}

export function tableColumns(book: Book, spec: TableSpec, x: number, width: number): PlacedColumn[] {
  const shares = spec.columns.reduce((sum, column) => sum + column.share, 0);
  const free = width - CELL_GAP * (spec.columns.length - 1);
  let left = x;
  return spec.columns.map((column, i) => {
    const own = (free * column.share) / shares;
    const placed = {
      x: left,
      width: own,
      align: column.align ?? "left",
      axisPt: column.align === "measure" ? axis(book, spec, i) : 0,
    };
    left += own + CELL_GAP;
    return placed;
  });
}

/** The widest whole number of the column: its end is the axis. */
function axis(book: Book, spec: TableSpec, column: number): number {
  return widest(book, spec, column, (text) => splitMeasure(text)[0]);
}

/** Width of a column in which no cell is broken, pt; words of its head may be. */
export function widestCell(book: Book, spec: TableSpec, column: number): number {
  // What is rounded up keeps a text from being broken by its last bit.
  const spare = 0.5;
  if (spec.columns[column]?.align !== "measure") return widest(book, spec, column, (text) => text) + spare;
  return axis(book, spec, column) + widest(book, spec, column, (text) => splitMeasure(text)[1]) + spare;
}

function widest(book: Book, spec: TableSpec, column: number, part: (text: string) => string): number {
  const widths = spec.rows.map((cells, i) => {
    const strong = spec.sum === true && i === spec.rows.length - 1;
    const cell = cells[column];
    const isRich = typeof cell === "object";
    const style = strong || (isRich && cell.strong === true) ? book.look.cellStrong : book.look.cell;
    const signPt = isRich ? (cell.sign?.widthPt ?? 0) : 0;
    return signPt + book.pen.widthOf(part(book.spell(textOf(cell))), style);
  });
  return Math.max(0, ...widths);
}

export function layRow(
  book: Book,
  columns: readonly PlacedColumn[],
  cells: readonly CellLike[],
  base: TextStyle,
  atLeastPt = 0,
): LaidRow {
  const laid = columns.map((column, i): LaidCell => {
    const cell = cells[i];
    const rich = typeof cell === "object" ? cell : undefined;
    const bold = rich?.strong === true ? book.look.cellStrong : base;
    const style: TextStyle = rich?.quiet === true ? { ...bold, paint: "pencil" } : bold;
    const indentPt = rich?.sign === undefined ? 0 : rich.sign.widthPt;
    const lines = book.lines(textOf(cell), column.width - indentPt, style);
    return { column, lines, style, indentPt, sign: rich?.sign?.draw };
  });
  const lines = Math.max(1, ...laid.map((cell) => cell.lines.length));
  const leadingPt = base.leadingPt;
  return {
    cells: laid,
    leadingPt,
    heightPt: Math.max(atLeastPt, lines * leadingPt + 2 * book.look.cellPadPt),
  };
}

/** Sets a row with its top at `y`. The first cell of a body row names the row. */
export function setRow(book: Book, row: LaidRow, y: number, as: "TH" | "TD" | "plain"): void {
  row.cells.forEach((cell, i) => {
    if (cell.sign !== undefined) {
      const { sign } = cell;
      const middle = y + book.look.cellPadPt + row.leadingPt / 2;
      const draw = () => sign(cell.column.x, middle);
      if (as === "plain") draw();
      else book.tags.artifact(draw);
    }
    if (as === "plain") {
      setCell(book, cell, y, row.leadingPt);
      return;
    }
    const heading = as === "TH" || i === 0;
    book.tags.mark(heading ? "TH" : "TD", () => setCell(book, cell, y, row.leadingPt), {
      ...(heading ? { scope: as === "TH" ? "Column" : "Row" } : {}),
    });
  });
}

function setCell(book: Book, cell: LaidCell, y: number, leadingPt: number): void {
  const { column, style } = cell;
  const left = column.x + cell.indentPt;
  cell.lines.forEach((line, i) => {
    const baseline = y + book.look.cellPadPt + i * leadingPt + firstBaseline({ ...style, leadingPt });
    if (column.align === "right") {
      book.pen.text(line, column.x + column.width, baseline, style, "end");
    } else if (column.align === "measure" && column.axisPt > 0 && i === 0) {
      const [whole, rest] = splitMeasure(line);
      book.pen.text(whole, left + column.axisPt, baseline, style, "end");
      book.pen.text(rest, left + column.axisPt, baseline, style);
    } else {
      book.pen.text(line, left, baseline, style);
    }
  });
}
