import type { ChildSafetyTag, TagLine } from "../../shade-plan/index.ts";
import { breakWords } from "../placing/break-words.ts";
import { FLAT_CAPITAL_EM, SMALL_LETTER_EM, textWidthEm } from "../placing/text-width.ts";

/** Printers and paper lose a little: letters are set so much higher than the least. */
const PRINT_ALLOWANCE = 1.02;
const LEADING_EM = 1.15;
const LINE_GAP_EM = 0.24;
const GROUP_GAP_MM = 2;
/** Words of another typeface, where a viewer has not this one, run a little wider. */
const WIDTH_SHARE = 0.95;
/** Letters of a line that a column is made for, and its least width. */
const COLUMN_EM = 14;
const LEAST_COLUMN_MM = 62;
/** Shortest line to write on beside its words. */
const WRITING_MM = 26;
const WRITING_LINE = /\s*_+\s*$/;

/** One line of letters at its place in its column, mm; its baseline at `y`. */
export interface SetLine {
  words: string;
  line: TagLine;
  emMm: number;
  x: number;
  y: number;
}

/** A line to write on. */
interface WritingLine {
  from: number;
  to: number;
  y: number;
}

export interface TagColumns {
  widthMm: number;
  heightMm: number;
  letters: SetLine[];
  writing: WritingLine[];
}

/** Height of the em that makes letters at least as high as asked: capitals by their own height, others by that of x. */
export function emOf({ minHeightMm, capitals }: TagLine): number {
  return (PRINT_ALLOWANCE * minHeightMm) / (capitals ? FLAT_CAPITAL_EM : SMALL_LETTER_EM);
}

/** Lines of one side of a tag with the languages side by side, each kind of line beginning level in all of them. */
export function setColumns(tag: ChildSafetyTag, lines: readonly TagLine[], gutterMm: number): TagColumns {
  const widthMm = columnWidth(tag);
  const columns: TagColumns = { widthMm, heightMm: 0, letters: [], writing: [] };
  for (const kind of ["signal", "warning", "instruction", "maker"] as const) {
    const ofKind = lines.filter((line) => line.kind === kind);
    if (ofKind.length === 0) continue;
    const top = columns.heightMm === 0 ? 0 : columns.heightMm + GROUP_GAP_MM;
    const ends = tag.languages.map((language, i) => {
      const x = i * (widthMm + gutterMm);
      return ofKind
        .filter((line) => line.language === language)
        .reduce((y, line) => setOne(columns, line, x, y), top);
    });
    columns.heightMm = Math.max(...ends);
  }
  return columns;
}

/**
 * The lines of each side: one side where that is not too high, else two of nearly one height. The front then has
 * the warnings and perhaps some of what to do, the back has the rest and the maker.
 */
export function sidesOf(tag: ChildSafetyTag, mostMm: number): TagLine[][] {
  const height = (lines: readonly TagLine[]) => setColumns(tag, lines, 0).heightMm;
  if (height(tag.lines) <= mostMm) return [tag.lines];
  const instructions = tag.languages.map((language) =>
    tag.lines.filter((line) => line.kind === "instruction" && line.language === language),
  );
  const most = Math.max(...instructions.map(({ length }) => length));
  const splits = Array.from({ length: most + 1 }, (_, count) => {
    const onBack = new Set(instructions.flatMap((lines) => lines.slice(count)));
    const isBack = (line: TagLine) => line.kind === "maker" || onBack.has(line);
    return [tag.lines.filter((line) => !isBack(line)), tag.lines.filter(isBack)];
  });
  const higher = (sides: readonly TagLine[][]) => Math.max(...sides.map(height));
  return splits.reduce((best, sides) => (higher(sides) < higher(best) ? sides : best));
}

function columnWidth({ lines }: ChildSafetyTag): number {
  const small = lines.filter((line) => !line.capitals).map(emOf);
  const signal = lines
    .filter((line) => line.capitals)
    .map((line) => (textWidthEm(line.text) * emOf(line)) / WIDTH_SHARE);
  return Math.max(LEAST_COLUMN_MM, COLUMN_EM * Math.max(0, ...small), ...signal);
}

/** Sets one line of the tag over as many lines of its column as it needs; gives where the next begins. */
function setOne(columns: TagColumns, line: TagLine, x: number, top: number): number {
  const emMm = emOf(line);
  const leading = LEADING_EM * emMm;
  const label = line.text.replace(WRITING_LINE, "");
  const broken = breakWords(keptTogether(label), (WIDTH_SHARE * columns.widthMm) / emMm);
  let y = top;
  for (const words of broken) {
    y += leading;
    columns.letters.push({ words, line, emMm, x, y });
  }
  if (label !== line.text) {
    const last = textWidthEm(broken.at(-1) ?? "") * emMm + emMm * 0.4;
    const beside = columns.widthMm - last >= WRITING_MM;
    if (!beside) y += leading * 1.15;
    columns.writing.push({ from: x + (beside ? last : 0), to: x + columns.widthMm, y: y + 0.12 * emMm });
  }
  return y + LINE_GAP_EM * emMm;
}

/** French puts a blank before a colon, and a number stays with its unit: neither is parted at the end of a line. */
function keptTogether(text: string): string {
  return text.replace(/ (?=[:;?!»])|(?<=\d) (?=cm\b)/g, "\u00a0");
}
