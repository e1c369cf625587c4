import fc from "fast-check";
import papaparse from "papaparse";
import { describe, expect, it } from "vitest";
import { csvParts, toCsv } from "./csv.ts";

/** Reads a list back with the library's own reader, which drops the byte order mark. */
function readBack(csv: string): string[][] {
  const { data, errors } = papaparse.parse<string[]>(csv, { skipEmptyLines: true });
  expect(errors).toEqual([]);
  return data;
}

const table = (cell: string | number) => ({ name: "list", header: ["a", "b"], rows: [[cell, 1]] });

describe("lists as CSV", () => {
  // RFC 4180, section 2: CRLF between records, quotes doubled inside quotes.
  it("follows RFC 4180", () => {
    expect(toCsv(table('35 3/8 in, "wide"'))).toBe('\ufeff"a","b"\r\n"35 3/8 in, ""wide""",1\r\n');
  });

  // The starts that a spreadsheet runs: OWASP, “CSV injection”.
  it.each([
    "=1+1",
    "+1",
    "-1",
    "@SUM(A1)",
    "\t=1",
    "\r=1",
    "\n=1",
    " =1",
    "＝1",
    '=HYPERLINK("http://x","y")',
  ])("does not let %j run in a spreadsheet", (hostile) => {
    const cell = readBack(toCsv(table(hostile)))[1]?.[0];
    expect(cell).toBe(`'${hostile}`);
  });

  it("leaves numbers alone, negative ones too", () => {
    expect(toCsv(table(-3.5))).toContain("\r\n-3.5,1\r\n");
  });

  it("is the same however its rows are grouped", () => {
    const rows = [
      ["a", 1],
      ["=b", -2],
      ["", 3],
      ['"', 4],
      ["é\r\n", 5],
    ];
    for (const stamp of [undefined, "Not to be used"]) {
      const groups = [[], rows.slice(0, 2), [], rows.slice(2), []];
      expect([...csvParts(["x", "y"], groups, stamp)].join("")).toBe(
        toCsv({ name: "list", header: ["x", "y"], rows }, stamp),
      );
    }
  });

  it("gives every text back as it was, or led by the apostrophe", () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.string(), fc.string()), { minLength: 1, maxLength: 5 }), (rows) => {
        const read = readBack(toCsv({ name: "list", header: ["a", "b"], rows })).slice(1);
        expect(read.length).toBe(rows.length);
        rows.flat().forEach((text, i) => {
          const cell = read[Math.floor(i / 2)]?.[i % 2];
          expect([text, `'${text}`]).toContain(cell);
        });
      }),
      { seed: 31, numRuns: 300 },
    );
  });
});
