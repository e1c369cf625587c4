import { expect, test } from "vitest";
import { pagesOfBook } from "../../../test/workbook/book-pages.ts";
import { columnBlocks } from "./column-blocks.ts";
import { paragraph } from "./paragraph.ts";

const BLOCKS = 10;

test("titled texts in columns never leave one to three of them alone for the next page", async () => {
  const overs = new Set<number>();
  for (let startPt = 300; startPt < 640; startPt += 8) {
    const pages = await pagesOfBook((book) => {
      paragraph(book, "What stands before.");
      book.y = book.top + startPt;
      const items = Array.from({ length: BLOCKS }, (_, i) => ({
        title: `Title ${i + 1}`,
        text: "A few words.",
      }));
      columnBlocks(book, items);
    });
    const counts = pages.map(({ runs }) => runs.filter(({ text }) => text.startsWith("Title")).length);
    expect(counts.reduce((sum, count) => sum + count, 0)).toBe(BLOCKS);
    if (counts.length > 1) overs.add(counts.at(-1) ?? 0);
  }
  expect([...overs].sort((a, b) => a - b)[0]).toBe(4);
});
