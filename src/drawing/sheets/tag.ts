import { groupedBy } from "../../figures/index.ts";
import type { ShadePlan } from "../../plan/index.ts";
import type { ChildSafetyTag, TagLine } from "../../shade-plan/index.ts";
import { citeText } from "../../sources/index.ts";
import { trimmed } from "../../units/index.ts";
import type { Drawing, Fact, Primitive } from "../model.ts";
import { breakWords } from "../placing/break-words.ts";
import { ASCENT_EM, DESCENT_EM } from "../placing/text-width.ts";
import { line, note, rect } from "./shapes.ts";
import { NOTE_MM } from "./sheet-input.ts";
import { type SetLine, setColumns, sidesOf, type TagColumns } from "./tag-columns.ts";

/** Letters of one side reach at most so far down: more goes on the back. */
const MOST_MM = 182;
const PAD_MM = 4;
const GUTTER_MM = 7;
/** Hole to hang it by: room for a tie or an eyelet. */
const HOLE_RADIUS_MM = 2.5;
const HOLE_FROM_TOP_MM = 6;
const HEAD_MM = 10;
/** From the cut line to what stands beside the tag. */
const BESIDE_MM = 2.5;
const CLEAR_MM = 1;
const LEADING = 1.3;
const OFFICIAL =
  "Along the bracket beside the tag: words of the official text, as far as it was read. All other words are our own.";
const LANGUAGE_NAMES: Record<TagLine["language"], string> = { en: "English", fr: "French" };

/**
 * The child-safety tag of one shade, to be laid out at scale 1: only there its letters are as high as they must be.
 * One drawing, or a front and a back of one size to be glued together. What is no part of the tag (which words are
 * official, and the note) stands outside its cut line.
 * @param known what is filled in already, by what a line asks for
 */
export function drawTag(
  { tag: blank }: Pick<ShadePlan, "tag">,
  known: Readonly<Record<string, string>> = {},
): Drawing[] {
  const tag = { ...blank, lines: blank.lines.map((one) => filledIn(one, known)) };
  const sides = sidesOf(tag, MOST_MM).map((lines) => ({ lines, columns: setColumns(tag, lines, GUTTER_MM) }));
  const count = tag.languages.length;
  const [first] = sides;
  if (first === undefined) return [];
  const size = {
    width: 2 * PAD_MM + count * first.columns.widthMm + (count - 1) * GUTTER_MM,
    height: HEAD_MM + Math.max(...sides.map(({ columns }) => columns.heightMm)) + PAD_MM,
  };
  return sides.map(({ lines, columns }, i): Drawing => {
    const side = sides.length === 1 ? undefined : i === 0 ? "front" : "back";
    return {
      id: side === undefined ? "tag" : `tag-${side}`,
      title: side === undefined ? "Child-safety tag" : `Child-safety tag, ${side}`,
      caption: `Print at 100 % and cut along the line.${side === undefined ? "" : " Front and back are one tag: glue them together."} ${tag.note}`,
      primitives: drawSide(columns, count, size),
      facts: factsOf(tag, lines),
    };
  });
}

/** What is known stands on its line in place of the blank. */
function filledIn(one: TagLine, known: Readonly<Record<string, string>>): TagLine {
  const words = one.asks === undefined ? undefined : known[one.asks];
  return words === undefined ? one : { ...one, text: one.text.replace(/_+$/, words) };
}

interface Size {
  width: number;
  height: number;
}

function drawSide(columns: TagColumns, count: number, { width, height }: Size): Primitive[] {
  const letters = columns.letters.map((one) => ({ ...one, x: one.x + PAD_MM, y: one.y + HEAD_MM }));
  return [
    rect("cut", { x: 0, y: 0, width, height }, { part: "tag" }),
    {
      kind: "circle",
      role: "cut",
      centre: [width / 2, HOLE_FROM_TOP_MM],
      radiusMm: HOLE_RADIUS_MM,
      part: "hole",
    },
    ...dividers(count, columns.widthMm, height),
    ...letters.map(letterLine),
    ...columns.writing.map(({ from, to, y }) =>
      line("leader", [
        [from + PAD_MM, y + HEAD_MM],
        [to + PAD_MM, y + HEAD_MM],
      ]),
    ),
    ...officialMarks(letters, columns.widthMm, { width, height }),
  ];
}

function dividers(count: number, columnMm: number, height: number): Primitive[] {
  return Array.from({ length: count - 1 }, (_, i) => {
    const x = PAD_MM + (i + 1) * columnMm + (i + 0.5) * GUTTER_MM;
    return line("leader", [
      [x, HEAD_MM + 4],
      [x, height - PAD_MM],
    ]);
  });
}

function letterLine({ words, line: { bold }, emMm, x, y }: SetLine): Primitive {
  return {
    kind: "text",
    role: "label",
    at: [x, y],
    text: words,
    paperMm: emMm,
    anchor: "start",
    baseline: "bottom",
    // `y` is the line that the letters stand on.
    shiftPaperMm: [0, DESCENT_EM * emMm],
    strong: bold,
    part: "tag",
  };
}

/** A bracket outside the cut line along each line of official words, and what it means under the tag. */
function officialMarks(letters: readonly SetLine[], columnMm: number, tag: Size): Primitive[] {
  const official = groupedBy(
    letters.filter(({ line }) => line.official),
    ({ line }) => line,
  );
  if (official.size === 0) return [];
  return [
    ...[...official.values()].map((rows) => bracket(rows, columnMm, tag)),
    ...breakWords(OFFICIAL, tag.width / NOTE_MM).map((text, i) =>
      note([0, tag.height + BESIDE_MM + (i + 0.5) * LEADING * NOTE_MM], text, { anchor: "start" }),
    ),
  ];
}

function bracket(rows: readonly SetLine[], columnMm: number, tag: Size): Primitive {
  const isLeft = rows.every(({ x }) => x < PAD_MM + columnMm);
  const edge = isLeft ? -CLEAR_MM : tag.width + CLEAR_MM;
  const back = isLeft ? -BESIDE_MM : tag.width + BESIDE_MM;
  const top = Math.min(...rows.map(({ y, emMm }) => y - ASCENT_EM * emMm));
  const bottom = Math.max(...rows.map(({ y, emMm }) => y + DESCENT_EM * emMm));
  return line(
    "label",
    [
      [edge, top],
      [back, top],
      [back, bottom],
      [edge, bottom],
    ],
    { part: "official" },
  );
}

function factsOf(tag: ChildSafetyTag, lines: readonly TagLine[]): Fact[] {
  const least = (label: string, capitals: boolean, what: string): Fact[] => {
    const heights = lines.filter((one) => one.capitals === capitals).map((one) => one.minHeightMm);
    return heights.length === 0
      ? []
      : [{ label, text: `${what} at least ${trimmed(Math.min(...heights), 1)}\u00a0mm high` }];
  };
  return [
    ...least("Signal word", true, "bold capitals"),
    ...least("Other words", false, "small letters such as x"),
    { label: "Heights", text: citeText(tag.heights) },
    ...tag.languages.map((language) => ({
      label: LANGUAGE_NAMES[language],
      text: lines
        .filter((one) => one.language === language)
        .map(({ text }) => text)
        .join(" "),
    })),
  ];
}
