import fc from "fast-check";
import Papa from "papaparse";
import { describe, expect, test } from "vitest";
import { PART_KINDS, PART_SCHEMAS } from "../../job/index.ts";
import { partColumns, readPartsCsv } from "./read-parts-csv.ts";

describe("parts from a list", () => {
  test("columns by name, commas in quotes, empty cells left out, ids made from names", () => {
    const { parts, issues } = readPartsCsv(
      'name,diameterMm,breakingN,note\r\n"Braid, white",1.4,450,\r\nBraid white,"1,8",,"strong ""one"""\r\n',
      "cords",
    );
    expect(issues).toEqual([]);
    expect(parts).toEqual([
      { id: "braid-white", name: "Braid, white", diameterMm: 1.4, breakingN: 450 },
      { id: "braid-white-2", name: "Braid white", diameterMm: 1.8, note: 'strong "one"' },
    ]);
  });

  test("a row that cannot be used is told by line and column, and the others stay", () => {
    const { parts, issues } = readPartsCsv("name,diameterMm\nGood,1.4\nThick,99\nNone,\n", "cords");
    expect(parts.map(({ name }) => name)).toEqual(["Good"]);
    expect(issues.map(({ line, column, given }) => [line, column, given])).toEqual([
      [3, "diameterMm", "99"],
      [4, "diameterMm", "nothing"],
    ]);
  });

  test("a column that no part has is told with those that it could be", () => {
    const { issues } = readPartsCsv("name,diameter\nA,1.4\n", "cords");
    expect(issues[0]).toMatchObject({ line: 1, column: "diameter" });
    expect(issues[0]?.wanted).toContain("diameterMm");
  });

  test.each(PART_KINDS)("%s: columns are fields of the schema", (kind) => {
    for (const column of partColumns(kind)) expect(Object.keys(PART_SCHEMAS[kind].shape)).toContain(column);
  });

  test("whatever is in the file, nothing throws, and what comes out fits the schema", () => {
    const cell = fc.oneof(fc.string(), fc.double().map(String), fc.constantFrom("yes", "", "steel", "-1"));
    fc.assert(
      fc.property(
        fc.constantFrom(...PART_KINDS),
        fc.array(fc.array(cell, { maxLength: 6 })),
        (kind, rows) => {
          const text = Papa.unparse([partColumns(kind).slice(0, 6), ...rows]);
          const { parts } = readPartsCsv(text, kind);
          for (const part of parts) expect(PART_SCHEMAS[kind].safeParse(part).success).toBe(true);
        },
      ),
    );
  });
});
