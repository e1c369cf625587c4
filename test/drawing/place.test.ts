import { describe, expect, test } from "vitest";
import {
  type Drawing,
  drawSheet,
  type Placed,
  type PlacedText,
  type Point,
  place,
} from "../../src/drawing/index.ts";
import { SHEETS, type SheetKind } from "../../src/shade-plan/index.ts";
import { CASES } from "../gallery/windows.ts";
import { realCorners, touch } from "./real-letters.ts";

/** Paper widths and heights, mm, with the letters' factor: a phone, a page, a screen. */
const PAPERS = [
  [88, 150, 1.2],
  [150, 190, 1],
  [250, 170, 1.4],
] as const;

const RAISES: Record<SheetKind, readonly number[]> = {
  picture: [0.5],
  front: [0, 0.5, 1],
  back: [0, 0.35, 1],
  side: [0, 0.5, 0.77, 1],
  cutting: [0],
  marking: [0],
  board: [0],
  lock: [0],
  force: [0, 0.5, 1],
  strips: [0],
};

const drawn = Object.entries(CASES).flatMap(([name, make]) => {
  const { plan, shade } = make();
  return SHEETS.flatMap((kind) =>
    RAISES[kind].map((raise) => ({
      name: `${name}, ${kind} at ${raise}`,
      drawing: drawSheet(kind, plan, shade, { raise }),
    })),
  );
});

const textsOf = (placed: Placed) => placed.items.filter((item): item is PlacedText => item.kind === "text");

function everyPoint(placed: Placed): Point[] {
  return placed.items.flatMap((item): Point[] => {
    if (item.kind === "path") return item.lines.flat();
    if (item.kind === "circle") {
      const [x, y] = item.centre;
      const r = item.radiusMm;
      return [
        [x - r, y - r],
        [x + r, y + r],
      ];
    }
    if (item.kind === "facets") return item.faces.flatMap(({ lines }) => lines.flat());
    return realCorners(item).map(([x, y]): Point => [x, y]);
  });
}

describe.each(PAPERS)("on %d × %d mm with letters × %d", (maxWidthMm, maxHeightMm, textScale) => {
  const onPaper = (drawing: Drawing) => place(drawing, { maxWidthMm, maxHeightMm }, { textScale });

  test.each(drawn)("$name fits, and all of it lies within its box", ({ drawing }) => {
    const placed = onPaper(drawing);
    expect(placed.widthMm).toBeLessThanOrEqual(maxWidthMm + 1e-6);
    expect(placed.heightMm).toBeLessThanOrEqual(maxHeightMm + 1e-6);
    for (const [x, y] of everyPoint(placed)) {
      expect(x).toBeGreaterThan(-0.01);
      expect(y).toBeGreaterThan(-0.01);
      expect(x).toBeLessThan(placed.widthMm + 0.01);
      expect(y).toBeLessThan(placed.heightMm + 0.01);
    }
  });

  test.each(drawn)("$name: no words lie on others (letters measured in the font)", ({ drawing }) => {
    const texts = textsOf(onPaper(drawing));
    const shapes = texts.map(realCorners);
    const overlaps = shapes.flatMap((shape, i) =>
      shapes
        .slice(i + 1)
        .flatMap((other, j) =>
          touch(shape, other) ? [`${texts[i]?.text} | ${texts[i + 1 + j]?.text}`] : [],
        ),
    );
    expect(overlaps).toEqual([]);
  });

  test.each(drawn)("$name: cord numbers stand apart", ({ drawing }) => {
    const tags = onPaper(drawing).items.flatMap((item) =>
      item.kind === "circle" && item.role === "cord" && item.stroke?.paint === "ink" && item.fill === "paper"
        ? [item]
        : [],
    );
    const numbers = new Map(tags.map((tag) => [tag.cord, tag]));
    const each = [...numbers.values()];
    each.forEach((tag, i) => {
      for (const other of each.slice(i + 1)) {
        const apart = Math.hypot(tag.centre[0] - other.centre[0], tag.centre[1] - other.centre[1]);
        expect(apart).toBeGreaterThanOrEqual(tag.radiusMm + other.radiusMm);
      }
    });
  });

  test.each(drawn)("$name: words are upright and not tiny", ({ drawing }) => {
    for (const text of textsOf(onPaper(drawing))) {
      expect(text.angleDeg).toBeGreaterThanOrEqual(-90);
      expect(text.angleDeg).toBeLessThan(90);
      expect(text.sizeMm).toBeGreaterThanOrEqual(2.3 * textScale);
    }
  });
});

test("more room gives a larger drawing, never a smaller one", () => {
  const { plan, shade } = CASES.outside();
  const drawing = drawSheet("back", plan, shade);
  const scales = [80, 110, 150, 200, 300].map(
    (side) => place(drawing, { maxWidthMm: side, maxHeightMm: side }).scale,
  );
  expect(scales).toEqual([...scales].sort((a, b) => a - b));
});

test("a point on paper goes back to its place on the shade", () => {
  const { plan, shade } = CASES.outside();
  const drawing = drawSheet("marking", plan, shade);
  const placed = place(drawing, { maxWidthMm: 150, maxHeightMm: 190 });
  const rings = placed.items.flatMap((item) =>
    item.kind === "circle" && item.part === "ring-3-2" ? [item.centre] : [],
  );
  const row = shade.grid.rows.find((one) => one.number === 3);
  const column = shade.grid.columns.find((one) => one.number === 2);
  const [x = 0, y = 0] = rings[0] ?? [];
  const across = (x - placed.originMm[0]) / placed.scale;
  const down = (y - placed.originMm[1]) / placed.scale;
  expect(across).toBeCloseTo(shade.size.finishedWidthMm - (column?.xMm ?? 0), 6);
  expect(down).toBeCloseTo(row?.yMm ?? 0, 6);
});

test("at full size a strip is as long as the shade", () => {
  const { plan, shade } = CASES.outside();
  const placed = place(drawSheet("strips", plan, shade), { scale: 1 });
  const cut = placed.items.find((item) => item.kind === "path" && item.role === "cut" && item.closed);
  const xs = cut?.kind === "path" ? cut.lines.flat().map(([x]) => x) : [];
  expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(shade.size.finishedLengthMm, 6);
});

test("an empty drawing is a small empty box", () => {
  const empty: Drawing = { id: "e", title: "Empty", caption: "", primitives: [], facts: [] };
  const placed = place(empty, { maxWidthMm: 100, maxHeightMm: 100 });
  expect(placed.items).toEqual([]);
  expect(Number.isFinite(placed.widthMm) && Number.isFinite(placed.heightMm)).toBe(true);
});
