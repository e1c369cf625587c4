import { expect, test } from "vitest";
import { readableTable } from "./readable-table.ts";

test("headings are words with units, and a length is one length as fraction, decimal and millimetres", () => {
  const { header, rows } = readableTable(
    {
      name: "cut-list",
      header: ["piece", "fromSelvedge", "fromSelvedgeMm", "count"],
      rows: [
        ["Face", "12 3/8 in", 314.371, 1],
        ["Lining", "3/8 in", 9.525, 2],
        ["Band", "12 in", 304.8, 2],
        ["Rib", "", "", 7],
        ["Cut back", "-1 1/2 in", -38.1, 1],
      ],
    },
    "imperial",
  );
  expect(header).toEqual(["Piece", "From selvedge", "From selvedge, in", "From selvedge, mm", "Count"]);
  // 12 3/8 = 12.375 by hand, and so on.
  expect(rows.map(([, text, decimal]) => [text, decimal])).toEqual([
    ["12 3/8 in", 12.375],
    ["3/8 in", 0.375],
    ["12 in", 12],
    ["", ""],
    ["-1 1/2 in", -1.5],
  ]);
  // 1 in = 25.4 mm exactly (NIST SP 811, 2008, appendix B.8): 12.375 × 25.4 = 314.325, not the 314.371 before the ruler.
  expect(rows.map(([, , , mm]) => mm)).toEqual([314.325, 9.525, 304.8, "", -38.1]);
});

test("millimetres need no second column, and other texts are left", () => {
  const { header, rows } = readableTable(
    {
      name: "marks",
      header: ["window", "height", "heightMm"],
      rows: [
        ["Come in", "905 mm", 905.36],
        ["Attic", "", ""],
      ],
    },
    "metric",
  );
  expect(header).toEqual(["Window", "Height", "Height, mm"]);
  expect(rows).toEqual([
    ["Come in", "905 mm", 905],
    ["Attic", "", ""],
  ]);
});

test("millimetres with no length by the ruler before them stay as they are", () => {
  const { header, rows } = readableTable(
    {
      name: "cuts",
      header: ["direction", "onBoltMm"],
      rows: [["across", 905.36]],
    },
    "imperial",
  );
  expect(header).toEqual(["Direction", "On bolt, mm"]);
  expect(rows).toEqual([["across", 905.36]]);
});

test("the columns of a list are the same whatever is in it, and their units are written as units", () => {
  const header = ["width", "widthMm", "pullN", "turnedDeg", "gapPercent"];
  const headings = ["Width", "Width, in", "Width, mm", "Pull, N", "Turned, °", "Gap, %"];
  for (const rows of [[], [["", "", 35, 90, 2.5]], [["3/8 in", 9.525, 35, 90, 2.5]]])
    expect(readableTable({ name: "any", header, rows }, "imperial").header).toEqual(headings);
});
