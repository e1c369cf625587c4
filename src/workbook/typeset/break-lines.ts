import type { Face, Faces } from "../../letters/index.ts";
import { keptTogether } from "../../words/index.ts";
import type { TextStyle } from "./type-scale.ts";

/** Where a line may end: after a space, or after a hyphen, slash or dash inside a word. */
const CHUNK = /[^ ]*?(?:[-/–—](?=[^\s\d])| +|$)/gu;

function chunks(paragraph: string): string[] {
  return paragraph.match(CHUNK)?.filter((chunk) => chunk !== "") ?? [];
}

/** The longest beginning that fits, at least one letter, so that a name without spaces still ends. */
function fittingLetters(word: string, width: number, face: Face, sizePt: number): string {
  const letters = Array.from(word);
  let low = 1;
  let high = letters.length;
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (face.widthOf(letters.slice(0, middle).join(""), sizePt) <= width) low = middle;
    else high = middle - 1;
  }
  return letters.slice(0, low).join("");
}

function breakParagraph(paragraph: string, width: number, face: Face, sizePt: number): string[] {
  const lines: string[] = [];
  const widthOf = (text: string) => face.widthOf(text, sizePt);
  let line = "";
  let taken = 0;
  for (const chunk of chunks(paragraph)) {
    if (taken + widthOf(chunk.trimEnd()) <= width) {
      line += chunk;
      taken += widthOf(chunk);
      continue;
    }
    if (line !== "") lines.push(line.trimEnd());
    line = chunk;
    while (widthOf(line.trimEnd()) > width) {
      const part = fittingLetters(line, width, face, sizePt);
      lines.push(part);
      line = line.slice(part.length);
    }
    taken = widthOf(line);
  }
  lines.push(line.trimEnd());
  return lines;
}

const NO_BREAK = "\u00a0";

/** Breaks printable text into lines no wider than `widthPt`; its own line breaks are kept. */
export function breakLines(text: string, widthPt: number, style: TextStyle, faces: Faces): string[] {
  const face = faces[style.face];
  return keptTogether(text)
    .split("\n")
    .flatMap((paragraph) => breakParagraph(paragraph.trim(), widthPt, face, style.sizePt))
    .map((line) => line.replaceAll(NO_BREAK, " "));
}
