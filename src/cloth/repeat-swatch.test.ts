import { expect, test } from "vitest";
import { type ClothPhoto, SWATCH_SIDE } from "../job/index.ts";
import { repeatSwatch } from "./repeat-swatch.ts";

/** Red above, green below, each of a shade that grows to the right. */
const COLOURS = Array.from({ length: SWATCH_SIDE }, (_, row) =>
  Array.from({ length: SWATCH_SIDE }, (_u, column) =>
    row < SWATCH_SIDE / 2
      ? `${column.toString(16).padStart(2, "0")}0000`
      : `00${column.toString(16).padStart(2, "0")}00`,
  ).join(""),
).join("");
const PHOTO: ClothPhoto = {
  ...{ image: "data:image/png;base64,AAAA", swatch: COLOURS },
  ...{ leftShare: 0, topShare: 0, widthShare: 1, heightShare: 1 },
};

test("the whole picture is its own repeat; of a quarter each colour comes twice", () => {
  expect(repeatSwatch(PHOTO).swatch).toBe(COLOURS);
  const quarter =
    repeatSwatch({ ...PHOTO, leftShare: 0.5, topShare: 0.5, widthShare: 0.5, heightShare: 0.5 }).swatch ?? "";
  expect(quarter).toHaveLength(COLOURS.length);
  expect(quarter.slice(0, 6)).toBe(`00${(SWATCH_SIDE / 2).toString(16).padStart(2, "0")}00`);
  expect(quarter.slice(6, 12)).toBe(quarter.slice(0, 6));
});

test("a picture without its colours gives none", () => {
  const { swatch: _, ...bare } = PHOTO;
  expect(repeatSwatch(bare)).toEqual({});
  expect(repeatSwatch(undefined)).toEqual({});
});
