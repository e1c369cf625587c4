import { expect, test } from "vitest";
import type { Point } from "../model.ts";
import { hatchLines } from "./hatch-lines.ts";

const lengthOf = (lines: Point[][]) =>
  lines.reduce((sum, [a, b]) => (a && b ? sum + Math.hypot(b[0] - a[0], b[1] - a[1]) : sum), 0);

/** Shoelace formula. */
function area(polygon: readonly Point[]): number {
  let twice = 0;
  polygon.forEach(([x, y], i) => {
    const [nextX, nextY] = polygon[(i + 1) % polygon.length] ?? [0, 0];
    twice += x * nextY - nextX * y;
  });
  return Math.abs(twice) / 2;
}

const square: Point[] = [
  [0, 0],
  [50, 0],
  [50, 50],
  [0, 50],
];
const arrow: Point[] = [
  [0, 0],
  [60, 0],
  [60, 40],
  [30, 12],
  [0, 40],
];

test.each([
  ["square", square, 45],
  ["square", square, -45],
  ["square", square, 0],
  ["a shape with a notch", arrow, 45],
  ["a shape with a notch", arrow, 20],
])("%s: length of lines times spacing is its area (%#)", (_, polygon, angle) => {
  const spacing = 0.5;
  const ratio = (lengthOf(hatchLines(polygon, angle, spacing)) * spacing) / area(polygon);
  expect(Math.abs(ratio - 1)).toBeLessThan(0.02);
});

test("no line leaves the polygon: every middle lies within", () => {
  for (const [a, b] of hatchLines(arrow, 30, 1)) {
    if (a === undefined || b === undefined) continue;
    const x = (a[0] + b[0]) / 2;
    const y = (a[1] + b[1]) / 2;
    // The notch lies below y = 40 − 28·x/30 mirrored about x = 30.
    const edge = x < 30 ? 40 - (28 * x) / 30 : 12 + (28 * (x - 30)) / 30;
    expect(y).toBeGreaterThanOrEqual(-1e-9);
    expect(y).toBeLessThanOrEqual(edge + 1e-9);
  }
});
