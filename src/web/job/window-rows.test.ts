import { describe, expect, test } from "vitest";
import { spreadsheetCells } from "../../tables/index.ts";
import type { UnitChoice } from "../../units/index.ts";
import { EMPTY_ROW, MOST_NEW_WINDOWS, readWindowRows, withCells } from "./window-rows.ts";

const imperial: UnitChoice = { system: "imperial", ruler: "1/8 in" };
const metric: UnitChoice = { system: "metric", ruler: "1 mm" };

describe("several windows at once", () => {
  // 1 in = 25.4 mm exactly: NIST SP 811 (2008), appendix B.8.
  test("rows are read as makers write lengths; empty ones are no windows", () => {
    const { sizes, troubles } = readWindowRows(
      [["Left", "35 3/8", "5' 0\""], EMPTY_ROW, ["", "36", "60"]],
      imperial,
    );
    expect(troubles).toEqual([]);
    expect(sizes).toEqual([
      { name: "Left", widthMm: 898.525, heightMm: 1524 },
      { name: "", widthMm: 914.4, heightMm: 1524 },
    ]);
  });

  test("every cell that cannot be read is told by its row and column", () => {
    const { troubles } = readWindowRows([["A", "wide", "60"], EMPTY_ROW, ["B", "36", ""]], imperial);
    expect(troubles.map(({ row, column }) => [row, column])).toEqual([
      [0, 1],
      [2, 2],
    ]);
  });

  // Cells with a quotation mark are quoted and the mark doubled: RFC 4180, section 2.
  test("what a spreadsheet copies is laid over the cells from one on", () => {
    const cells = spreadsheetCells('Left\t"35 3/8"""\t60\r\nRight\t36\t"2\' 11"""\r\n');
    expect(cells).toEqual([
      ["Left", '35 3/8"', "60"],
      ["Right", "36", "2' 11\""],
    ]);
    expect(withCells([EMPTY_ROW, EMPTY_ROW], cells, { row: 1, column: 0 })).toEqual([
      EMPTY_ROW,
      ["Left", '35 3/8"', "60"],
      ["Right", "36", "2' 11\""],
    ]);
    expect(withCells([["A", "", ""]], [["90,5 cm", "1,5 m", "beyond"]], { row: 0, column: 1 })).toEqual([
      ["A", "90,5 cm", "1,5 m"],
    ]);
    expect(readWindowRows([["A", "90,5 cm", "1,5 m"]], metric).sizes[0]).toEqual({
      name: "A",
      widthMm: 905,
      heightMm: 1500,
    });
  });

  test("without tabs semicolons part the columns, and a list too long ends where it must", () => {
    expect(spreadsheetCells("A; 90,5 cm; 150 cm")).toEqual([["A", "90,5 cm", "150 cm"]]);
    const long = Array.from({ length: MOST_NEW_WINDOWS + 5 }, () => ["A", "900", "1500"]);
    expect(withCells([], long, { row: 0, column: 0 })).toHaveLength(MOST_NEW_WINDOWS);
  });
});
