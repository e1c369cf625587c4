import { expect, test } from "vitest";
import { type MarkWords, placeWords } from "./place-words.ts";

/** Letters half as wide as they are high, in a place 60 pt wide. */
const room = {
  inside: { left: 0, top: 0, right: 60, bottom: 400 },
  taken: [],
  joins: [],
  widthOf: (text: string, sizePt: number) => 0.5 * sizePt * text.length,
};

const mark = (name: string): MarkWords => ({ y: 200, name, text: "102 mm" });

test("a name a little too long for its strip is set a little smaller, astride its line, not tiny", () => {
  const [short, long, longest] = ["Pleat 1 left", "Pleat 10 middle..", "Pleat 100 in the middle"].map(
    (name) => placeWords([mark(name)], room),
  );
  expect(short?.map(({ sizePt }) => sizePt)).toEqual([8, 8]);
  expect(long?.map(({ sizePt }) => sizePt)).toEqual([6.5, 6.5]);
  expect(long?.[0]?.baseline).toBeLessThan(200);
  expect(long?.[1]?.baseline).toBeGreaterThan(200);
  // Too long at any size: the least that can be done.
  expect(longest?.length).toBeGreaterThan(0);
});
