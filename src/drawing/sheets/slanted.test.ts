import { expect, test } from "vitest";
import { withRowsToRight } from "../../../test/slanting-rows.ts";
import { drawSheet } from "./index.ts";

test.each(["side", "force"] as const)("of rows that slant, %s says which section it shows", (sheet) => {
  const caption = (rows: number[]) => {
    const { planned, shade } = withRowsToRight(rows);
    return drawSheet(sheet, planned, shade, { raise: 0.5 }).caption;
  };
  expect(caption([100, 300, 500])).toMatch(/Rows or hem slant: this is how it is half way across\.$/);
  expect(caption([190, 390, 590])).not.toContain("slant");
});
