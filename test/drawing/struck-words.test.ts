import { expect, test } from "vitest";
import { drawSheet, type Placed, type PlacedText, type Point, place } from "../../src/drawing/index.ts";
import { SHEETS } from "../../src/shade-plan/index.ts";
import { CASES } from "../gallery/windows.ts";
import { realCorners } from "./real-letters.ts";

/** A stroke that only grazes letters by so much leaves them to be read, mm. */
const GRAZED_MM = 0.25;

/** The stretch from a to b in the frame of some letters: along their line and down from its baseline. */
function inFrameOf(text: PlacedText): (point: Point) => Point {
  const turn = (text.angleDeg * Math.PI) / 180;
  return ([x, y]) => {
    const [dx, dy] = [x - text.at[0], y - text.at[1]];
    return [dx * Math.cos(turn) + dy * Math.sin(turn), dy * Math.cos(turn) - dx * Math.sin(turn)];
  };
}

/** Whether any part of a stretch lies within an upright box (Liang and Barsky, ACM Transactions on Graphics 3(1), 1984). */
function passes([ax, ay]: Point, [bx, by]: Point, [left, top, right, bottom]: readonly number[]): boolean {
  let [from, to] = [0, 1];
  const clip = (delta: number, room: number) => {
    if (delta === 0) return room >= 0;
    const share = room / delta;
    if (delta < 0) from = Math.max(from, share);
    else to = Math.min(to, share);
    return from <= to;
  };
  return (
    clip(ax - bx, ax - (left ?? 0)) &&
    clip(bx - ax, (right ?? 0) - ax) &&
    clip(ay - by, ay - (top ?? 0)) &&
    clip(by - ay, (bottom ?? 0) - ay)
  );
}

/** What is drawn from here on is not hidden under the paper disc that a number stands on. */
function bareFrom(items: Placed["items"], at: number, [x, y]: Point): number {
  const disc = items
    .slice(0, at)
    .findLastIndex(
      (item) =>
        item.kind === "circle" &&
        item.fill === "paper" &&
        Math.hypot(item.centre[0] - x, item.centre[1] - y) < item.radiusMm,
    );
  return Math.max(0, disc + 1);
}

/** Words that a line strikes through: one drawn over them, or under them where they have no border of paper. */
function struck({ items }: Placed): string[] {
  return items.flatMap((text, at) => {
    if (text.kind !== "text") return [];
    const frame = inFrameOf(text);
    const corners = realCorners(text).map(([x, y]) => frame([x, y]));
    const [xs, ys] = [corners.map(([x]) => x), corners.map(([, y]) => y)];
    const box = [
      Math.min(...xs) + GRAZED_MM,
      Math.min(...ys) + GRAZED_MM,
      Math.max(...xs) - GRAZED_MM,
      // Below the baseline stand few letters.
      Math.min(0, Math.max(...ys)) - GRAZED_MM,
    ];
    const over = items.slice(text.haloMm === undefined ? bareFrom(items, at, text.at) : at + 1);
    const by = over.find(
      (item) =>
        item.kind === "path" &&
        item.stroke !== undefined &&
        item.lines.some((line) => {
          const points = item.closed ? [...line, ...line.slice(0, 1)] : line;
          return points.slice(1).some((b, i) => passes(frame(points[i] as Point), frame(b), box));
        }),
    );
    return by === undefined ? [] : [`${text.text} by ${"role" in by ? by.role : ""} ${by.part ?? ""}`];
  });
}

const HEIGHTS = [0, 0.5, 1] as const;

test.each(Object.keys(CASES) as (keyof typeof CASES)[])("%s: no line goes through words", (name) => {
  const { plan, shade } = CASES[name]();
  for (const kind of SHEETS) {
    if (kind === "picture") continue;
    for (const raise of HEIGHTS) {
      const drawing = drawSheet(kind, plan, shade, { raise });
      expect(struck(place(drawing, { maxWidthMm: 150, maxHeightMm: 190 })), `${kind} at ${raise}`).toEqual(
        [],
      );
    }
  }
});
