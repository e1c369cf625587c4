import type { UnitSystem } from "../units/index.ts";
import { type Cell, listMm, type Table } from "./table.ts";

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

/** Units that stand at the end of a name, as they are written. */
const UNITS: readonly (readonly [RegExp, string])[] = [
  [/Percent$/, "%"],
  [/Deg$/, "°"],
  [/(?<=[a-z])N$/, "N"],
];

/** `fromLeftEdge` → `From left edge`, `pullN` → `Pull, N`. */
function heading(name: string): string {
  const unit = UNITS.find(([ending]) => ending.test(name));
  if (unit !== undefined) return `${heading(name.replace(unit[0], ""))}, ${unit[1]}`;
  const words = name.replace(/([A-Z])/g, (letter) => ` ${letter.toLowerCase()}`);
  return words.charAt(0).toUpperCase() + words.slice(1);
}

const MM = /Mm$/;
const MM_PER_INCH = 25.4;
/** A length in millimetres as the lists write it: `905 mm`. */
const MILLIMETRES = /^(-?\d+(?:\.\d+)?) mm$/;

/** The length that a text by the ruler says, in millimetres; undefined for any other text. */
function shownMm(text: string): number | undefined {
  const inches = decimalInches(text);
  if (inches !== undefined) return listMm(inches * MM_PER_INCH);
  const found = MILLIMETRES.exec(text)?.[1];
  return found === undefined ? undefined : Number(found);
}

/**
 * The list as it is opened in a spreadsheet: headings in words with their units, and beside a length by the ruler the
 * same as decimal numbers to compute with, in inches and in millimetres. All three are one length, that of the ruler:
 * who adds any of them up comes to the same. As it was worked out, before any ruler, it stands in the plan.
 * The columns of a list are the same for all jobs of one system of units, whatever is in them.
 */
export function readableTable({ name, header, rows }: Table, system: UnitSystem): Table {
  const isInches = header.map((column, i) => system === "imperial" && header[i + 1] === `${column}Mm`);
  // A length in millimetres stands behind the same by the ruler.
  const behindText = header.map((column, i) => MM.test(column) && header[i - 1] === column.replace(MM, ""));
  return {
    name,
    header: header.flatMap((column, i) =>
      MM.test(column)
        ? [`${heading(column.replace(MM, ""))}, mm`]
        : isInches[i]
          ? [heading(column), `${heading(column)}, in`]
          : [heading(column)],
    ),
    rows: rows.map((row) =>
      row.flatMap((cell, i): Cell[] => {
        if (isInches[i]) return [cell, decimalInches(String(cell)) ?? ""];
        return [(behindText[i] ? shownMm(String(row[i - 1])) : undefined) ?? cell];
      }),
    ),
  };
}
