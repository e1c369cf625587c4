import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { FONTS } from "../../../test/workbook/fonts.ts";
import { openFaces } from "../../letters/index.ts";
import { breakLines } from "./break-lines.ts";
import { TYPE } from "./type-scale.ts";

const FACES = openFaces(FONTS);
const lines = (text: string, width: number) => breakLines(text, width, TYPE.body, FACES);
const widthOf = (text: string) => FACES.regular.widthOf(text, TYPE.body.sizePt);

describe("lines of text", () => {
  test("break at spaces, and keep to the width", () => {
    expect(lines("Cut along the line", widthOf("Cut along "))).toEqual(["Cut along", "the line"]);
  });

  test("never part a number from its fraction or unit", () => {
    const text = "It hangs 34 1⁄4 in below";
    expect(lines(text, widthOf("It hangs 34 1⁄4"))).toEqual(["It hangs", "34 1⁄4 in", "below"]);
    expect(lines("It hangs 870 mm below", widthOf("It hangs 870"))).toEqual(["It hangs", "870 mm", "below"]);
  });

  test("break after a hyphen or slash inside a word, but not inside a fraction", () => {
    expect(lines("hook-and-loop", widthOf("hook-and-"))).toEqual(["hook-and-", "loop"]);
    expect(lines("Take 3/8 now", widthOf("Take 3/"))).toEqual(["Take", "3/8", "now"]);
  });

  test("a word longer than the line is broken between letters", () => {
    const parts = lines("W".repeat(50), 100);
    expect(parts.join("")).toBe("W".repeat(50));
    for (const part of parts) expect(widthOf(part)).toBeLessThanOrEqual(100);
  });

  test("keep the text’s own breaks", () => {
    expect(lines("one\ntwo", 500)).toEqual(["one", "two"]);
  });

  test("hold every letter once and none is wider than it may be", () => {
    const word = fc.string({ unit: fc.constantFrom(..."abcWi-/3⁄ "), maxLength: 80 });
    fc.assert(
      fc.property(word, fc.integer({ min: 20, max: 300 }), (text, width) => {
        const broken = lines(text, width);
        expect(broken.join("").replace(/\s/g, "")).toBe(text.replace(/\s/g, ""));
        for (const line of broken) expect(widthOf(line)).toBeLessThanOrEqual(width + 0.6);
      }),
    );
  });
});

describe("the typeface", () => {
  test("has figures of one width, and real fractions narrower than their digits in a row", () => {
    const figures = [..."0123456789"].map((digit) => widthOf(digit));
    expect(new Set(figures).size).toBe(1);
    expect(widthOf("3⁄8")).toBeLessThan(widthOf("3") + widthOf("⁄") + widthOf("8"));
  });
});
