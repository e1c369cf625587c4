import { textWidthEm } from "./text-width.ts";

/** Breaks a text at its spaces into lines of at most so many ems. A longer word stands alone. */
export function breakWords(text: string, roomEm: number): string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(" ")) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (line !== "" && textWidthEm(longer) > roomEm) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  if (line !== "") lines.push(line);
  return lines;
}
