import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { FONTS } from "../../../test/workbook/fonts.ts";
import { openPdf, readPages } from "../../../test/workbook/read-pdf.ts";
import { openJobText } from "../../job/index.ts";
import { plan } from "../../plan/index.ts";
import { makeWorkbook } from "../make-workbook.ts";

test("the list of shades counts what there is to fix as the page of a shade does: a cause of three rules is one", async () => {
  const opened = openJobText(readFileSync("examples/lantern-row.json", "utf8"));
  if (!opened.ok) throw new Error("the demonstration does not open");
  const made = plan(opened.job);
  const [left] = made.shades;
  const failed = left?.findings.filter(({ severity }) => severity === "fix") ?? [];
  expect(failed.length).toBeGreaterThan(1);
  expect(new Set(failed.map(({ cause }) => cause?.id)).size).toBe(1);
  const bytes = await makeWorkbook({ plan: made, sets: ["table"], paper: "letter", fonts: FONTS });
  const [front = { text: "" }] = await readPages(await openPdf(bytes));
  expect(front.text.match(/\d+ to fix/g)).toEqual(["1 to fix", "1 to fix", "1 to fix"]);
});
