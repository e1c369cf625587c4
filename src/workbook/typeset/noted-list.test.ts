import { expect, test } from "vitest";
import { pagesOfBook } from "../../../test/workbook/book-pages.ts";
import { type Noted, notedGroups, notedList } from "./noted-list.ts";
import { TYPE } from "./type-scale.ts";

const pagesOf = (entries: readonly Noted[]) => pagesOfBook((book) => notedList(book, entries));

const small = Array.from({ length: 9 }, (_, i) => ({ words: `small ${i}`, style: TYPE.small }));

test("an entry that begins a page leaves the rest of that page to those that follow", async () => {
  const entries = Array.from(
    { length: 40 },
    (_, i): Noted => ({
      word: `entry ${i}`,
      text: [{ words: "a line", style: TYPE.chapter }, ...small],
    }),
  );
  const pages = await pagesOf(entries);
  // 25 + 9 × 11.5 pt of lines and 10 pt of white are 138.5 pt: four of them on a page of 662 pt, none parted.
  expect(pages).toHaveLength(10);
  for (const { runs } of pages) expect(runs.filter(({ text }) => text === "a line")).toHaveLength(4);
});

test("an entry longer than a page goes on where it was parted, by the leading of each of its lines", async () => {
  const long = Array.from({ length: 12 }, () => small).flat();
  const [first, second, ...more] = await pagesOf([
    { word: "long", text: [{ words: "a heading", style: TYPE.chapter }, ...long] },
    { word: "short", text: [{ words: "the end", style: TYPE.body }] },
  ]);
  expect(more).toEqual([]);
  // As many small lines as the page holds: a leading of 11.5 pt, not that of the heading.
  expect(first?.runs.filter(({ text }) => text.startsWith("small")).length).toBeGreaterThan(48);
  const end = second?.runs.find(({ text }) => text === "the end");
  const last = Math.max(
    ...(second?.runs ?? []).filter(({ text }) => text.startsWith("small")).map(({ y }) => y),
  );
  expect((end?.y ?? 0) - last).toBeLessThan(40);
});

test("a last page for one entry is saved by a little less white; one that is well filled is kept", async () => {
  const sumsOn = async (count: number) => {
    const entries = Array.from(
      { length: count },
      (_, i): Noted => ({
        word: `sum ${i}`,
        text: [{ words: "a line", style: TYPE.body }, ...small.slice(0, 1)],
      }),
    );
    const pages = await pagesOfBook((book) => notedGroups(book, [{ heading: "Sums", entries }]));
    return pages.map(({ runs }) => runs.filter(({ text }) => text === "a line").length);
  };
  // 14 + 11.5 pt of lines and 10 pt of white are 35.5 pt: 18 of them on a page of 662 pt under a heading of 20 pt.
  expect(await sumsOn(18)).toEqual([18]);
  expect(await sumsOn(19)).toEqual([19]);
  expect(await sumsOn(30)).toEqual([18, 12]);
});
