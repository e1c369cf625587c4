import { expect, test } from "vitest";
import { FONTS } from "../../test/workbook/fonts.ts";
import { FACE_NAMES, openFaces } from "./typeface.ts";

// ISO 32000-1:2008, 9.10.2: a reader takes the characters of a text from what the glyphs are said to stand for.
test.each(FACE_NAMES)(
  "a glyph stands for its character, %s, though it was met first as a part of another",
  (name) => {
    const { font } = openFaces({ ...FONTS, [name]: FONTS[name]?.slice() ?? FONTS.regular })[name];
    // A colon is two points, an umlaut a letter with two: their outlines are made of them.
    for (const word of [":", "…", ";", "äöüÄÖÜéèñç"])
      for (const { path } of font.layout(word).glyphs) path.toSVG();
    for (const word of ["0.9", "1.2", "a", "o", "u", ".", "off", "office", "fixed"]) {
      const read = font.layout(word).glyphs.map(({ codePoints }) => String.fromCodePoint(...codePoints));
      expect(read.join("")).toBe(word);
    }
  },
);
