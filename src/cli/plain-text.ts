/**
 * Text for a terminal: control characters would let a file name or a job move the cursor, and
 * direction marks would let it rearrange the line.
 */
export function plainLine(text: string): string {
  return text.replace(/[\p{Cc}\u200e\u200f\u202a-\u202e\u2066-\u2069]+/gu, " ");
}

/**
 * Breaks a line at spaces into lines of so many columns, the first set in as it begins, later ones by `indent`. A longer
 * word stands alone.
 */
export function wrapped(text: string, columns: number, indent: string): string {
  const plain = plainLine(text);
  const lead = /^ */.exec(plain)?.[0] ?? "";
  const lines: string[] = [];
  let line = "";
  for (const word of plain.slice(lead.length).split(" ")) {
    if (line !== "" && line.length + 1 + word.length > columns) {
      lines.push(line);
      line = word;
    } else line = line === "" ? word : `${line} ${word}`;
  }
  lines.push(line);
  return lead + lines.join(`\n${indent}`);
}
