import papaparse from "papaparse/papaparse.js";
import { notYetKnown, PART_SCHEMAS, type PartEntry, type PartKind } from "../../job/index.ts";

/** What has parts of its own does not fit a cell. */
const NOT_IN_A_CELL: ReadonlySet<string> = new Set(["repeat", "photo", "demo", "alsoSold", "known", "tests"]);

/** Most rows of one list. */
const MOST_ROWS = 500;

export interface PartsRead<P> {
  parts: P[];
  /** Rows that cannot be used: line of the file, column, what was given, what would do. */
  issues: { line: number; column: string; given: string; wanted: string }[];
}

/** Columns that a list of this kind can have: the fields of the job document, units in their names. */
export function partColumns(kind: PartKind): string[] {
  const { shape } = PART_SCHEMAS[kind];
  return Object.keys(shape).filter((key) => !NOT_IN_A_CELL.has(key));
}

/**
 * Reads parts from CSV (RFC 4180): the first line names the columns, an empty cell leaves a field out. An id is made
 * from the name where there is none. A row that cannot be used is reported and left out; the others are kept.
 */
export function readPartsCsv(text: string, kind: PartKind): PartsRead<PartEntry> {
  const known = partColumns(kind);
  const read = papaparse.parse(text.replace(/^\uFEFF/, ""), {
    header: true,
    skipEmptyLines: "greedy",
    transformHeader: (header: string) => header.trim(),
  });
  const result: PartsRead<PartEntry> = { parts: [], issues: [] };
  const columns = read.meta.fields ?? [];
  for (const column of columns.filter((one) => one !== "" && !known.includes(one))) {
    result.issues.push({ line: 1, column, given: column, wanted: `one of ${known.join(", ")}` });
  }
  const ids = new Set<string>();
  read.data.slice(0, MOST_ROWS).forEach((row, i) => {
    const line = i + 2;
    const values = Object.fromEntries(
      columns
        .filter((column) => known.includes(column))
        .flatMap((column) => {
          const cell = (row[column] ?? "").trim();
          return cell === "" ? [] : [[column, cellValue(cell)] as const];
        }),
    );
    const id = uniqueId(String(values.id ?? values.name ?? `row-${line}`), ids);
    const parsed = PART_SCHEMAS[kind].safeParse({ ...values, id, name: String(values.name ?? id) });
    if (parsed.success) {
      const unknown = notYetKnown(kind, parsed.data);
      if (unknown.length === 0) result.parts.push(parsed.data);
      for (const column of unknown) {
        result.issues.push({
          line,
          column,
          given: "nothing",
          wanted: "a value: it cannot be planned with without",
        });
      }
    } else {
      for (const { path, message } of parsed.error.issues) {
        const column = String(path[0] ?? "(row)");
        const given = columns.includes(column) ? (row[column] ?? "").trim() : "nothing";
        result.issues.push({ line, column, given: given === "" ? "nothing" : given, wanted: message });
      }
    }
  });
  if (read.data.length > MOST_ROWS) {
    result.issues.push({
      line: MOST_ROWS + 2,
      column: "(list)",
      given: `${read.data.length} rows`,
      wanted: `at most ${MOST_ROWS}; split the list`,
    });
  }
  return result;
}

/** Numbers with point or comma, yes and no, else words. */
function cellValue(cell: string): unknown {
  if (/^[+-]?\d+(?:[.,]\d+)?$/.test(cell)) return Number(cell.replace(",", "."));
  if (/^(?:true|yes)$/i.test(cell)) return true;
  return /^(?:false|no)$/i.test(cell) ? false : cell;
}

function uniqueId(from: string, taken: Set<string>): string {
  const base =
    from
      .normalize("NFD")
      .replace(/[^A-Za-z0-9]+/g, "-")
      .replace(/^-+|-+$/g, "")
      .toLowerCase()
      .slice(0, 56) || "part";
  let id = base;
  for (let n = 2; taken.has(id); n++) id = `${base}-${n}`;
  taken.add(id);
  return id;
}
