import { createRequire } from "node:module";
import { openSync } from "fontkit";
import { expect, test } from "vitest";
import { CASES } from "../../test/gallery/windows.ts";
import { FONTS } from "../../test/workbook/fonts.ts";
import { drawSheet, place, toSvg } from "../drawing/index.ts";
import { SHEETS } from "../shade-plan/index.ts";
import { letterOutlines } from "./outlines.ts";

const letters = letterOutlines(FONTS);
const placedAll = SHEETS.map((kind) => {
  const { plan, shade } = CASES.outside();
  return place(drawSheet(kind, plan, shade), { maxWidthMm: 180, maxHeightMm: 235 });
});

test("a drawing with outlines names no font, has no text to be set, and keeps its words", () => {
  for (const placed of placedAll) {
    const plain = toSvg(placed);
    const svg = toSvg(placed, { letters });
    expect(svg).not.toMatch(/<text|font-/);
    const words = (text: string, mark: RegExp) => [...text.matchAll(mark)].map(([, word]) => word);
    expect(words(svg, /aria-label="([^"]*)"/g)).toEqual(words(plain, /<text[^>]*>([^<]*)/g));
    const ids = words(svg, / id="([^"]*)"/g);
    expect(new Set(ids).size).toBe(ids.length);
    for (const [, used] of svg.matchAll(/href="#([^"]*)"/g)) expect(ids).toContain(used);
  }
});

// Each shape once, and a short reference where it stands.
test("it is at most 40 kB of shapes and 60 bytes a letter larger than one that names a font", () => {
  for (const placed of placedAll) {
    const plain = toSvg(placed);
    const count = [...plain.matchAll(/<text[^>]*>([^<]*)/g)].join("").length;
    const more = toSvg(placed, { letters }).length - plain.length;
    expect(more, placed.id).toBeLessThan(40_000 + 60 * count);
  }
});

// Widths, kerning and shapes as the font library itself gives them.
test("letters stand where the font sets them, figures at one width", () => {
  const font = openSync(
    createRequire(import.meta.url).resolve(
      "@expo-google-fonts/source-sans-3/400Regular/SourceSans3_400Regular.ttf",
    ),
  );
  if (font.type !== "TTF") throw new Error(font.type);
  for (const text of ["AVATAR", "36 × 60 in", "Größe 3⁄8", "Łódź Đà Nẵng", "Москва"]) {
    const run = font.layout(text, ["tnum"]);
    const line = letters(text, false);
    expect(line.width).toBeCloseTo((run.advanceWidth * 1000) / font.unitsPerEm, 6);
    expect(line.letters.every(({ key }) => key !== "regular-0")).toBe(true);
    for (const [i, { path }] of line.letters.entries()) {
      const box = run.glyphs[i]?.path.cbox;
      const y = [...path.matchAll(/-?\d+ (-?\d+)/g)].map(([, value]) => -Number(value));
      if (y.length > 0 && box !== undefined) expect(Math.max(...y)).toBe(Math.round(box.maxY));
    }
  }
  expect(letters("1111", false).width).toBe(letters("8888", false).width);
});
