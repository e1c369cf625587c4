import { describe, expect, test } from "vitest";
import { realWidthEm } from "../../../test/drawing/real-letters.ts";
import { textWidthEm } from "./text-width.ts";

const LINES = [
  "35 3⁄8 in",
  "1372 mm",
  "49 5⁄8 in",
  "Face 2 of 3",
  "Cotton sateen lining, 54 in",
  "left edge, seen from the room",
  "cords together",
  "hem when raised",
  "Pocket lines, before sewing",
  "WAVING & QUOTES “1 × 2”",
  "Éloignez le garçon : là-bas, où la chaînette s’emmêle",
];

describe("against the letters of the font files", () => {
  test.each(LINES)("%s is never estimated too narrow, nor more than a fifth too wide", (line) => {
    for (const strong of [false, true]) {
      const real = realWidthEm(line.replaceAll("⁄", "/"), strong);
      expect(textWidthEm(line)).toBeGreaterThanOrEqual(realWidthEm(line, strong) - 1e-9);
      expect(textWidthEm(line)).toBeLessThanOrEqual(real * 1.2);
    }
  });
});

test("letters that the table lacks count as wide ones", () => {
  expect(textWidthEm("Ж")).toBeGreaterThan(0.6);
});
