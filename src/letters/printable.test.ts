import { describe, expect, test } from "vitest";
import { FONTS } from "../../test/workbook/fonts.ts";
import { lettersWithoutShape, printable, withoutShapeText } from "./printable.ts";
import { openFaces } from "./typeface.ts";

const { regular } = openFaces(FONTS);

// Names of scripts as in the Unicode Standard, chapters 7 to 19; the words mean “bedroom” or the like.
describe("names in scripts that the type has no shapes for", () => {
  test.each([
    ["Hebrew", "חדר"],
    ["Arabic", "غرفة"],
    ["Devanagari", "कमरा"],
    ["Bengali", "কক্ষ"],
    ["Tamil", "அறை"],
    ["Thai", "ห้อง"],
    ["Georgian", "ოთახი"],
    ["Armenian", "սենյակ"],
    ["Amharic", "ክፍል"],
    ["Han", "寝室"],
    ["Kana", "へやヘヤ"],
    ["Hangul", "침실"],
  ])("%s: every letter is told of, and none is set as another", (_script, name) => {
    const letters = [...new Set(name)];
    expect(lettersWithoutShape(`Room ${name}`, regular)).toEqual(letters);
    expect(withoutShapeText(letters)).toContain(letters.slice(0, 12).join(" "));
    expect(printable(name, regular)).toMatch(/^□+$/u);
  });
});

test.each(["Küche", "Phòng ngủ", "Ελλάδα", "Спальня", "Łóżko", "Ğışö"])(
  "%s is set as it is written",
  (name) => {
    expect(lettersWithoutShape(name, regular)).toEqual([]);
    expect(printable(name, regular)).toBe(name);
  },
);
