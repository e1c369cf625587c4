import type { Point } from "../model.ts";

/**
 * Parallel lines across a polygon (any simple one, even–odd), already clipped to it.
 * Lines lie on multiples of the spacing from the paper's origin, so that neighbouring areas run on.
 */
export function hatchLines(polygon: readonly Point[], angleDeg: number, spacingMm: number): Point[][] {
  const angle = (angleDeg * Math.PI) / 180;
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  // In the hatch's own frame the lines are level.
  const turned = polygon.map(([x, y]): Point => [x * cos + y * sin, -x * sin + y * cos]);
  let low = Infinity;
  let high = -Infinity;
  for (const [, y] of turned) {
    if (y < low) low = y;
    if (y > high) high = y;
  }
  const lines: Point[][] = [];
  const back = (x: number, y: number): Point => [x * cos - y * sin, x * sin + y * cos];
  for (let k = Math.floor(low / spacingMm) + 1; k * spacingMm < high; k += 1) {
    const level = k * spacingMm;
    const crossings = crossingsAt(turned, level);
    for (let i = 0; i + 1 < crossings.length; i += 2) {
      const from = crossings[i];
      const to = crossings[i + 1];
      if (from !== undefined && to !== undefined && to > from)
        lines.push([back(from, level), back(to, level)]);
    }
  }
  return lines;
}

function crossingsAt(polygon: readonly Point[], level: number): number[] {
  const crossings: number[] = [];
  for (let i = 0; i < polygon.length; i += 1) {
    const a = polygon[i];
    const b = polygon[(i + 1) % polygon.length];
    if (a === undefined || b === undefined || a[1] > level === b[1] > level) continue;
    crossings.push(a[0] + ((level - a[1]) / (b[1] - a[1])) * (b[0] - a[0]));
  }
  return crossings.sort((first, second) => first - second);
}
