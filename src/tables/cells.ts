import papaparse from "papaparse/papaparse.js";

/** Cells as they are copied from a spreadsheet or a list: columns lie between tabs, else between semicolons, since a comma may stand in a length. */
export function spreadsheetCells(text: string): string[][] {
  const delimiter = text.includes("\t") ? "\t" : ";";
  const { data } = papaparse.parse(text.trimEnd(), { header: false, delimiter });
  return data.map((line) => line.map((cell) => cell.trim()));
}
