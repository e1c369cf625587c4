import { expect, test } from "vitest";
import { ROLES } from "./model.ts";
import { PAINTS } from "./paints.ts";
import { LOOKS } from "./style.ts";

test("each role has a layer of its own, named as DXF R12 and later allow (letters, digits, -, _)", () => {
  const layers = ROLES.map((role) => LOOKS[role].layer);
  expect(new Set(layers).size).toBe(ROLES.length);
  for (const layer of layers) expect(layer).toMatch(/^[A-Z0-9_-]{1,31}$/);
});

test("each role says what it is, and no two say the same", () => {
  const legends = ROLES.map((role) => LOOKS[role].legend);
  expect(new Set(legends).size).toBe(ROLES.length);
});

test("the finished edge is the boldest line, a fold and a measure are thin", () => {
  const width = (role: (typeof ROLES)[number]) => LOOKS[role].stroke?.widthMm ?? 0;
  expect(width("finishedEdge")).toBe(0.5);
  for (const role of ["fold", "cut", "seam", "board", "dimension", "stitch"] as const)
    expect(width(role)).toBeLessThan(width("finishedEdge"));
  expect(width("dimension")).toBeLessThan(width("fold"));
});

test("every pen has a paint of the table, a width that prints, and dashes that can be seen", () => {
  for (const role of ROLES) {
    const { stroke, openStroke, fill, hatch, text } = LOOKS[role];
    for (const paint of [stroke?.paint, openStroke?.paint, hatch?.stroke.paint, fill, text])
      if (paint !== undefined) expect(Object.keys(PAINTS)).toContain(paint);
    for (const pen of [stroke, openStroke]) {
      if (pen === undefined) continue;
      expect(pen.widthMm).toBeGreaterThanOrEqual(0.13);
      for (const length of pen.dashMm ?? []) expect(length).toBeGreaterThanOrEqual(0.35);
    }
  }
});
