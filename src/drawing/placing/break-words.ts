import { keptTogether } from "../../words/index.ts";
import { textWidthEm } from "./text-width.ts";

/** Breaks a text at its spaces into lines of at most so many ems; a longer word, as a name can be, between its letters.
 * Numbers stay with their units. */
export function breakWords(text: string, roomEm: number): string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of keptTogether(text)
    .split(" ")
    .flatMap((one) => pieces(one, roomEm))) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (line !== "" && textWidthEm(longer) > roomEm) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  if (line !== "") lines.push(line);
  return lines;
}

/** A word that no line holds, in pieces that one does; the word itself where it fits. */
function pieces(word: string, roomEm: number): string[] {
  if (textWidthEm(word) <= roomEm) return [word];
  const all: string[] = [];
  let piece = "";
  for (const letter of word) {
    if (piece !== "" && textWidthEm(piece + letter) > roomEm) {
      all.push(piece);
      piece = letter;
    } else piece += letter;
  }
  return [...all, piece];
}
