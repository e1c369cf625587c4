import { expect, test } from "vitest";
import { plan } from "../../src/plan/index.ts";
import { makeWorkbook } from "../../src/workbook/index.ts";
import { jobWith } from "../job-with.ts";
import { FONTS } from "./fonts.ts";
import { openPdf, readPages, readStrokes } from "./read-pdf.ts";
import { wordBoxes } from "./word-boxes.ts";

test("in the drawing of the table sheet the names of pieces side by side stand in the middle of them", async () => {
  const job = jobWith(
    {
      name: "East window",
      opening: { widthsMm: [914.4], heightsMm: [1524] },
      shade: { style: "pleated-balloon", mount: "outside" },
    },
    { units: { system: "imperial", ruler: "1/8 in" } },
  );
  const pdf = await openPdf(
    await makeWorkbook({ plan: plan(job), sets: ["table"], paper: "a4", fonts: FONTS }),
  );
  const pages = await readPages(pdf);
  const at = pages.findIndex(({ runs }) => runs.some(({ text, sizePt }) => text === "Cut" && sizePt > 17));
  const page = pages[at];
  if (page === undefined) throw new Error("no sheet for cutting");
  const pieces = (await readStrokes(await pdf.getPage(at + 1))).filter(
    ({ width, height }) => width > 30 && height > 10,
  );
  // The list of pieces under the drawing has the same names, beside boxes to tick.
  const names = wordBoxes(page).filter(
    ({ text, left }) => /^(?:Face|Lining) \d of 3$/.test(text) && left > 60,
  );
  const inDrawing = names.filter(({ bottom }) => bottom < page.heightPt / 2);
  expect(inDrawing).toHaveLength(6);
  for (const { text, left, right, top, bottom } of inDrawing) {
    const around = pieces.filter(
      (one) =>
        one.left < left && right < one.left + one.width && one.top < top && bottom < one.top + one.height,
    );
    const heightPt = Math.min(...around.map(({ height }) => height));
    const piece = around.find(({ height }) => height === heightPt);
    expect(piece, text).toBeDefined();
    // Where its middle lies in the height of its piece: scissors and hem lines are at the edges.
    expect(((top + bottom) / 2 - (piece?.top ?? 0)) / heightPt, text).toBeCloseTo(0.5, 1);
  }
});
