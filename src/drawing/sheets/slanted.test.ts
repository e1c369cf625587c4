import { expect, test } from "vitest";
import { jobWith } from "../../../test/job-with.ts";
import { plan } from "../../plan/index.ts";
import { drawSheet } from "./index.ts";

function hung(rowsFromHemRightMm: number[]) {
  const planned = plan(
    jobWith({
      opening: { widthsMm: [900], heightsMm: [1500], sillAboveFloorMm: 900 },
      shade: {
        mount: "to-size",
        making: { lift: { kind: "cord-lock" } },
        existing: {
          tasks: ["restring"],
          rowsFromHemMm: [190, 390, 590],
          rowsFromHemRightMm,
          columnsFromLeftMm: [50, 450, 850],
        },
      },
    }),
  );
  const [shade] = planned.shades;
  if (shade === undefined) throw new Error("no shade");
  return { planned, shade };
}

test.each(["side", "force"] as const)("of rows that slant, %s says which section it shows", (sheet) => {
  const caption = (rows: number[]) => {
    const { planned, shade } = hung(rows);
    return drawSheet(sheet, planned, shade, { raise: 0.5 }).caption;
  };
  expect(caption([100, 300, 500])).toMatch(/Rows or hem slant: this is how it is half way across\.$/);
  expect(caption([190, 390, 590])).not.toContain("slant");
});
