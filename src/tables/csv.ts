import papaparse from "papaparse/papaparse.js";
import { asciiText, type Cell, type Table } from "./table.ts";

/** Spreadsheets guess an older encoding without it, and garble every × and accent. */
const BYTE_ORDER_MARK = "\ufeff";
/** Starts that a spreadsheet would run as a formula, full-width ones and those behind blanks included. */
const FORMULA_START = /^\s*[=+\-@\t\r\n＝＋－＠]/u;

/**
 * A list as CSV by RFC 4180: CRLF, every text in quotes, a byte order mark in front.
 * With a stamp every row ends with it, in a column of its own.
 * A text that a spreadsheet would run is led by an apostrophe.
 */
export function toCsv({ header, rows }: Table, stamp?: string): string {
  return [...csvParts(header, [rows], stamp)].join("");
}

/** The same in parts: the headings, then the rows of each group that has any. */
export function* csvParts(header: string[], groups: Iterable<Cell[][]>, stamp?: string): Generator<string> {
  yield `${BYTE_ORDER_MARK}${lines([stamp === undefined ? header : [...header, "stamp"]])}`;
  const last = stamp === undefined ? [] : [asciiText(stamp)];
  for (const rows of groups) if (rows.length > 0) yield lines(rows.map((row) => [...row, ...last]));
}

function lines(rows: Cell[][]): string {
  const text = papaparse.unparse(rows, {
    newline: "\r\n",
    quotes: (value) => typeof value === "string",
    escapeFormulae: FORMULA_START,
  });
  return `${text}\r\n`;
}
