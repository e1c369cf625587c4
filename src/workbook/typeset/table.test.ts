import { expect, test } from "vitest";
import { pagesOfBook } from "../../../test/workbook/book-pages.ts";
import { table } from "./table.ts";

const ROWS = 60;

/** What each page holds of the numbered rows of a table so far down its first page. */
async function rowsByPage(startPt: number): Promise<number[]> {
  const pages = await pagesOfBook((book) => {
    book.y = book.top + startPt;
    const rows = Array.from({ length: ROWS }, (_, i) => [`row ${i + 1}`]);
    table(book, { title: "Rows", columns: [{ title: "Row", share: 1 }], rows });
  });
  return pages.map(({ runs }) => runs.filter(({ text }) => text.startsWith("row ")).length);
}

test("the last page of a long table never holds one or two of its rows alone", async () => {
  const lastPages: number[] = [];
  for (let startPt = 0; startPt < 400; startPt += 12) {
    const counts = await rowsByPage(startPt);
    expect(counts.reduce((sum, count) => sum + count, 0)).toBe(ROWS);
    lastPages.push(counts.at(-1) ?? 0);
  }
  expect(Math.min(...lastPages)).toBe(3);
});
