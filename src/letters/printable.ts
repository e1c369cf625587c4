import type { Face } from "./typeface.ts";

/** Stands for a letter that the typeface has no shape for. */
export const NO_SHAPE = "□";

/** Control, format, private and unpaired characters: they have no shape, and some turn the reading order round. */
const UNSEEN = /[\p{Cc}\p{Cf}\p{Co}\p{Cs}\p{Zl}\p{Zp}]/gu;

const LINE_BREAKS = /\r\n?|[\n\u2028\u2029\v\f]/g;

/** Letters as the typeface can set them: hostile names become plain, harmless text. Line breaks stay. */
export function printable(text: string, face: Face): string {
  if (isPlain(text)) return text;
  return text
    .replace(LINE_BREAKS, "\n")
    .split("\n")
    .map((line) =>
      line
        .replaceAll("\t", " ")
        .replace(UNSEEN, "")
        .replace(/./gu, (letter) => shape(letter, face)),
    )
    .join("\n");
}

/** The same on one line. */
export function onOneLine(text: string, face: Face): string {
  return printable(text, face).replaceAll("\n", " ").trim();
}

function isPlain(text: string): boolean {
  return /^[ -~]*$/.test(text);
}

function shape(letter: string, face: Face): string {
  return face.has(letter.codePointAt(0) ?? 0) ? letter : NO_SHAPE;
}
