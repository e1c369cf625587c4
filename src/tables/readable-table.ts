import type { Cell, Table } from "./table.ts";

/** A length in inches as the lists write it: `35 3/8 in`. */
const INCHES = /^(-?)(?:(\d+) )?(?:(\d+)\/(\d+) |(\d+) )?in$/;

/** `35 3/8 in` → 35.375, `3/8 in` → 0.375, `35 in` → 35; undefined for any other text. */
function decimalInches(text: string): number | undefined {
  const found = INCHES.exec(text);
  if (found === null) return undefined;
  const [, sign, before, over, under, alone] = found;
  if (before === undefined && over === undefined && alone === undefined) return undefined;
  const fraction = over === undefined ? 0 : Number(over) / Number(under);
  const value = Number(before ?? 0) + fraction + Number(alone ?? 0);
  return sign === "-" ? -value : value;
}

/** `fromLeftEdge` → `From left edge`. */
function heading(name: string): string {
  const words = name.replace(/([A-Z])/g, (letter) => ` ${letter.toLowerCase()}`);
  return words.charAt(0).toUpperCase() + words.slice(1);
}

const EXACT = /Mm$/;

/**
 * The list as it is opened in a spreadsheet: headings in words with their units, and beside a length by the ruler the
 * same as a decimal number to reckon with. What ends in mm is as it was worked out, before any ruler.
 */
export function readableTable({ name, header, rows }: Table): Table {
  const isInches = header.map((_, i) =>
    rows.some((row) => typeof row[i] === "string" && decimalInches(String(row[i])) !== undefined),
  );
  return {
    name,
    header: header.flatMap((column, i) =>
      EXACT.test(column)
        ? [`${heading(column.replace(EXACT, ""))} exact, mm`]
        : isInches[i]
          ? [heading(column), `${heading(column)}, in`]
          : [heading(column)],
    ),
    rows: rows.map((row) =>
      row.flatMap((cell, i): Cell[] => (isInches[i] ? [cell, decimalInches(String(cell)) ?? ""] : [cell])),
    ),
  };
}
