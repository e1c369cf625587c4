import * as reader from "dxf-parser";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { toDxf } from "../../src/drawing/dxf/index.ts";
import { type Dimension, type Drawing, drawRoom, place, roomViews } from "../../src/drawing/index.ts";
import { type Plan, plan } from "../../src/plan/index.ts";
import { markMm, parseLength } from "../../src/units/index.ts";
import { likelyRoom, roomOf } from "../arbitrary-room.ts";
import { numbersOf } from "../lengths-in-text.ts";

const window = (id: string, sillMm: number, heightMm: number) => ({
  id,
  name: id,
  opening: { widthsMm: [900], heightsMm: [heightMm], sillAboveFloorMm: sillMm },
});

function drawn(planned: Plan, raise: number): Drawing {
  const [view] = roomViews(planned);
  if (view === undefined) throw new Error("invalid plan: no room");
  return drawRoom(planned, view, { raise });
}

/** Heights above the floor of the lines of one role, lowest first; the floor is at y = 0. */
function heightsOf({ primitives }: Drawing, role: string): number[] {
  return primitives
    .flatMap((one) =>
      one.kind === "polyline" && one.role === role ? [-(one.points[0]?.[1] ?? Number.NaN)] : [],
    )
    .sort((a, b) => a - b);
}

describe("a kitchen", () => {
  const planned = plan(
    roomOf([window("left", 900, 1200), window("door", 20, 2060), window("right", 1050, 1050)], true),
  );
  const line = planned.rooms[0]?.alignment;

  test("its levels go right across, at the heights that the plan names", () => {
    const drawing = drawn(planned, 0);
    expect(heightsOf(drawing, "level")).toEqual(line?.levelsMm);
    const ends = drawing.primitives.flatMap((one) =>
      one.role === "level" && one.kind === "polyline" ? [one.points] : [],
    );
    for (const points of ends) {
      expect(points[0]?.[0]).toBeLessThan(0);
      expect(points.at(-1)?.[0]).toBeGreaterThan(3 * 880);
    }
  });

  test("the folds of its shades are drawn on them", () => {
    const drawing = drawn(planned, 0);
    const folds = heightsOf(drawing, "fold");
    for (const mm of folds) {
      const nearest = Math.min(...(line?.levelsMm ?? []).map((level) => Math.abs(level - mm)));
      expect(nearest).toBeLessThan(0.1);
    }
    expect(folds.length).toBe(planned.shades.reduce((sum, { grid }) => sum + grid.rows.length, 0));
  });

  test("every height stands beside its level", () => {
    const texts = drawn(planned, 0).primitives.flatMap((one) =>
      one.kind === "dimension" && one.running === "levels" ? [one.text] : [],
    );
    expect(texts).toEqual(line?.levelsMm.map((mm) => `${mm}\u00a0mm`));
  });

  test("is read back from DXF, with a layer for the levels", () => {
    const Reader = (reader as unknown as { default: new () => { parseSync(text: string): unknown } }).default;
    const read = new Reader().parseSync(toDxf(drawn(planned, 0))) as { entities: { layer: string }[] };
    expect(read.entities.filter(({ layer }) => layer === "LEVEL")).toHaveLength(line?.levelsMm.length ?? 0);
  });
});

test("a long wall is drawn in parts, each window once", () => {
  const windows = Array.from({ length: 19 }, (_, i) => window(`w${i}`, 900, 1200));
  const planned = plan(roomOf(windows, undefined));
  const views = roomViews(planned);
  expect(views.flatMap(({ shades }) => shades.map(({ shadeId }) => shadeId))).toEqual(
    windows.map(({ id }) => id),
  );
  const ids = views.map((view) => drawRoom(planned, view).id);
  expect(new Set(ids).size).toBe(3);
});

test("any room, at any height: true dimensions, no number that is none, words for all of it", () => {
  fc.assert(
    fc.property(likelyRoom, fc.double({ min: 0, max: 1, noNaN: true }), (job, raise) => {
      const planned = plan(job);
      const drawing = drawn(planned, raise);
      const half = markMm(job.units.ruler) / 2 + 1e-6;
      for (const one of drawing.primitives.filter((each): each is Dimension => each.kind === "dimension")) {
        const read = parseLength(one.text, "mm");
        const spanned = Math.hypot(one.to[0] - one.from[0], one.to[1] - one.from[1]);
        expect(read.ok && Math.abs(read.lengthMm - spanned), one.text).toBeLessThanOrEqual(half);
      }
      expect(drawing.facts.length).toBeGreaterThanOrEqual(planned.shades.length);
      expect(numbersOf(place(drawing, { maxWidthMm: 150, maxHeightMm: 190 })).every(Number.isFinite)).toBe(
        true,
      );
    }),
    { numRuns: 25 },
  );
});
