import { expect, test } from "vitest";
import { readableTable } from "./readable-table.ts";

test("headings are words with units, and inches stand as a fraction and as a decimal of one rounding", () => {
  const { header, rows } = readableTable({
    name: "cut-list",
    header: ["piece", "fromSelvedge", "fromSelvedgeMm", "count"],
    rows: [
      ["Face", "12 3/8 in", 314.371, 1],
      ["Lining", "3/8 in", 9.525, 2],
      ["Band", "12 in", 304.8, 2],
      ["Rib", "", "", 7],
      ["Cut back", "-1 1/2 in", -38.1, 1],
    ],
  });
  expect(header).toEqual(["Piece", "From selvedge", "From selvedge, in", "From selvedge exact, mm", "Count"]);
  // 12 3/8 = 12.375 by hand, and so on.
  expect(rows.map(([, text, decimal]) => [text, decimal])).toEqual([
    ["12 3/8 in", 12.375],
    ["3/8 in", 0.375],
    ["12 in", 12],
    ["", ""],
    ["-1 1/2 in", -1.5],
  ]);
});

test("millimetres need no second column, and other texts are left", () => {
  const { header, rows } = readableTable({
    name: "marks",
    header: ["window", "height", "heightMm"],
    rows: [["Come in", "905 mm", 905]],
  });
  expect(header).toEqual(["Window", "Height", "Height exact, mm"]);
  expect(rows).toEqual([["Come in", "905 mm", 905]]);
});
