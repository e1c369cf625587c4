import { expect, test } from "vitest";
import { linesThatStay } from "./paragraph.ts";
import { splitMeasure } from "./table-rows.ts";

test.each([
  ["35 3⁄8 in", "35", " 3⁄8 in"],
  ["898 mm", "898", " mm"],
  ["3⁄8 in", "", "3⁄8 in"],
  ["−2 1⁄2 in", "−2", " 1⁄2 in"],
  ["1.85 yd", "1", ".85 yd"],
  ["not measured", "", "not measured"],
  ["", "", ""],
])("%s stands on the axis as %s and %s", (text, whole, rest) => {
  expect(splitMeasure(text)).toEqual([whole, rest]);
});

test.each([
  // lines, room for, stay: no line alone at the foot of a page or the head of the next.
  [5, 9, 5],
  [5, 5, 5],
  [5, 4, 3],
  [5, 3, 3],
  [5, 1, 0],
  [3, 2, 0],
  [2, 1, 0],
  [1, 1, 1],
])("of %i lines where %i fit, %i stay", (count, fit, stay) => {
  expect(
    linesThatStay(
      Array.from({ length: count }, () => 14),
      fit * 14,
    ),
  ).toBe(stay);
});
