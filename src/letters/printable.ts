import { MOST_WORDS, rememberedByText } from "./remember.ts";
import type { Face } from "./typeface.ts";

/** Stands for a letter that the typeface has no shape for. */
export const NO_SHAPE = "□";

/** Control, format, private and unpaired characters: they have no shape, and some turn the reading order round. */
const UNSEEN = /[\p{Cc}\p{Cf}\p{Co}\p{Cs}\p{Zl}\p{Zp}]/gu;

const LINE_BREAKS = /\r\n?|[\n\u2028\u2029\v\f]/g;

/** Letters as the typeface can set them: hostile names become plain, harmless text. Line breaks stay. */
export function printable(text: string, face: Face): string {
  if (isPlain(text)) return text;
  let known = remembered.get(face);
  if (known === undefined) {
    known = rememberedByText(MOST_WORDS, (one) => madePrintable(one, face));
    remembered.set(face, known);
  }
  return known(text);
}

/** Most lines are measured and then set. */
const remembered = new WeakMap<Face, (text: string) => string>();

function madePrintable(text: string, face: Face): string {
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

/** Letters of a text that none of its pages can show, each once, in the order in which they come. */
export function lettersWithoutShape(text: string, face: Face): string[] {
  if (isPlain(text)) return [];
  const letters = new Set(text.replace(LINE_BREAKS, "").replaceAll("\t", "").replace(UNSEEN, ""));
  return [...letters].filter((letter) => !face.has(letter.codePointAt(0) ?? 0));
}

/** A sentence on them; undefined where there are none. */
export function withoutShapeText(letters: readonly string[]): string | undefined {
  if (letters.length === 0) return undefined;
  const shown = letters.slice(0, MOST_SHOWN).join(" ");
  const more = letters.length > MOST_SHOWN ? ` and ${letters.length - MOST_SHOWN} more` : "";
  return `Names have letters that our type has no shape for: ${shown}${more}. On paper and in drawings each is ${NO_SHAPE}; write these names in Latin, Greek or Cyrillic letters to have them printed.`;
}

const MOST_SHOWN = 12;

function isPlain(text: string): boolean {
  return /^[ -~]*$/.test(text);
}

function shape(letter: string, face: Face): string {
  return face.has(letter.codePointAt(0) ?? 0) ? letter : NO_SHAPE;
}
