import papaparse from "papaparse/papaparse.js";
import { asciiText, type Table } from "./table.ts";

/** Spreadsheets guess an older encoding without it, and garble every × and accent. */
const BYTE_ORDER_MARK = "\ufeff";
/** Starts that a spreadsheet would run as a formula, full-width ones and those behind blanks included. */
const FORMULA_START = /^\s*[=+\-@\t\r\n＝＋－＠]/u;

/**
 * A list as CSV by RFC 4180: CRLF, every text in quotes, a byte order mark in front.
 * With a stamp every row ends with it, in a column of its own.
 * A text that a spreadsheet would run is led by an apostrophe.
 */
export function toCsv(table: Table, stamp?: string): string {
  const { header, rows } = stamp === undefined ? table : stamped(table, stamp);
  const text = papaparse.unparse(
    { fields: header, data: rows },
    { newline: "\r\n", quotes: (value) => typeof value === "string", escapeFormulae: FORMULA_START },
  );
  return `${BYTE_ORDER_MARK}${text}\r\n`;
}

function stamped({ header, rows }: Table, stamp: string): Pick<Table, "header" | "rows"> {
  return { header: [...header, "stamp"], rows: rows.map((row) => [...row, asciiText(stamp)]) };
}
