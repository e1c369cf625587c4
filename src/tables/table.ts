import { bareUnit, lengthInputText, type UnitChoice } from "../units/index.ts";

export type Cell = string | number;

/** A list of the plan: a heading for each column, a row for each thing. Columns named `…Mm` are millimetres. */
export interface Table {
  /** Also the name of its file: `cut-list`. */
  name: string;
  header: string[];
  rows: Cell[][];
}

/** Millimetres for a list, to a thousandth: free of binary dust, finer than any ruler. */
export function listMm(lengthMm: number): number {
  const rounded = Math.round(lengthMm * 1000) / 1000;
  return rounded === 0 ? 0 : rounded;
}

/** A length in the maker's units in plain characters, which every spreadsheet shows: `35 3/8 in`. */
export function listText(lengthMm: number, units: UnitChoice): string {
  return `${lengthInputText(lengthMm, units)} ${bareUnit(units)}`;
}

/** Both columns of one length. */
export function textAndMm(lengthMm: number, units: UnitChoice): [text: string, lengthMm: number] {
  return [listText(lengthMm, units), listMm(lengthMm)];
}

/** The same text with plain fractions and blanks. */
export function asciiText(text: string): string {
  return text.replaceAll("⁄", "/").replaceAll("\u00a0", " ");
}
