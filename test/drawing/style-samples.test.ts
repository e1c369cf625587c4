import { describe, expect, test } from "vitest";
import { drawStyleSample, place, toSvg } from "../../src/drawing/index.ts";
import { STYLE_NAMES, STYLES } from "../../src/job/index.ts";

const BOX = { maxWidthMm: 26, maxHeightMm: 31 };

describe("every style in small", () => {
  test.each(STYLES)("%s is drawn whole within its box", (style) => {
    const drawing = drawStyleSample(style);
    expect(drawing.title).toBe(STYLE_NAMES[style]);
    expect(drawing.primitives.filter(({ role }) => role === "faceCloth").length).toBeGreaterThan(0);
    for (const primitive of drawing.primitives) {
      if (primitive.kind !== "polyline") throw new Error(`invalid sample: a ${primitive.kind} in ${style}`);
      for (const value of primitive.points.flat()) expect(Number.isFinite(value)).toBe(true);
    }
    const placed = place(drawing, BOX);
    expect(placed.widthMm).toBeLessThanOrEqual(BOX.maxWidthMm + 1e-9);
    expect(placed.heightMm).toBeLessThanOrEqual(BOX.maxHeightMm + 1e-9);
  });

  test("no two are alike", () => {
    const drawn = STYLES.map((style) => toSvg(place({ ...drawStyleSample(style), title: "", id: "" }, BOX)));
    expect(new Set(drawn).size).toBe(STYLES.length);
  });
});
