import { describe, expect, test } from "vitest";
import { jobWith } from "../../test/job-with.ts";
import { FONTS } from "../../test/workbook/fonts.ts";
import { openPdf, readPages } from "../../test/workbook/read-pdf.ts";
import { PART_TESTS } from "../diagnose/index.ts";
import { plan } from "../plan/index.ts";
import { makeTestSheet } from "./make-test-sheet.ts";
import { makeWorkbook } from "./make-workbook.ts";
import { PAPER_KINDS } from "./typeset/paper.ts";

/** Letters alone: a PDF breaks lines and spaces where it likes. */
const letters = (text: string) => text.replace(/[\s\u00a0]+/g, "");

test.each(PAPER_KINDS)(
  "the sheet for the tests is one page of %s: each with its steps and room for its readings",
  async (paper) => {
    const pages = await readPages(await openPdf(await makeTestSheet(paper, FONTS)));
    expect(pages).toHaveLength(1);
    const words = letters(pages[0]?.text ?? "");
    for (const { title, steps, reads } of PART_TESTS) {
      for (const one of [title, ...steps, ...reads.map(({ label }) => label)])
        expect(words).toContain(letters(one));
    }
  },
);

describe("locks by cords on paper", () => {
  const sizes = { housingLengthMm: 32, housingWidthMm: 26, housingHeightMm: 22, dividerWires: 3 };
  const page = async (hardware: object) => {
    const planned = plan(jobWith({ shade: { making: { columns: { count: 5 } } } }, { hardware }));
    const pdf = await makeWorkbook({ plan: planned, sets: ["parts"], paper: "letter", fonts: FONTS });
    return (await readPages(await openPdf(pdf))).map(({ text }) => letters(text));
  };

  test("the maker's own are laid out with a word and its reason", async () => {
    const pages = await page({
      locks: [{ id: "l", name: "Brass lock", ...sizes, cordsMax: 8, cordMinMm: 1.2, cordMaxMm: 1.6 }],
      cords: [
        { id: "c", name: "Thin braid", diameterMm: 0.9 },
        { id: "d", name: "Stout braid", diameterMm: 1.4 },
      ],
    });
    expect(pages).toHaveLength(2);
    expect(pages[1]).toContain("Brasslockjamsfits");
    expect(pages[1]).toContain(
      letters("Brass lock with Thin braid: it is made for cord of 1.2 mm to 1.6 mm"),
    );
  });

  test("who has no lock of his or her own gets the sheet alone", async () => {
    expect(await page({})).toHaveLength(1);
  });
});
