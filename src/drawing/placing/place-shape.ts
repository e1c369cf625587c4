import { cordStyle } from "../cord-style.ts";
import type { Circle, Point, Polyline } from "../model.ts";
import type { PlacedItem, Stroke } from "../placed.ts";
import { LOOKS, TICK_PEN } from "../style.ts";
import { hatchLines } from "./hatch-lines.ts";
import { commonOf } from "./scaling.ts";

const ARROW_MM = 2.4;
export const SCISSORS_MM = 4.2;

/** A shape of the real thing on paper, with what belongs to its role: hatching, arrow heads, scissors, casing. */
export function placePolyline(line: Polyline, toPage: (at: Point) => Point, k: number): PlacedItem[] {
  const look = LOOKS[line.role];
  const common = commonOf(line);
  const points = line.points.map(toPage);
  const closed = line.closed === true;
  const path = (lines: Point[][], isClosed: boolean, stroke?: Stroke): PlacedItem => ({
    kind: "path",
    ...common,
    lines,
    closed: isClosed,
    ...(stroke === undefined ? {} : { stroke }),
  });
  if (line.role === "cord" && line.cord !== undefined) {
    const { casing, core } = cordStyle(line.cord);
    return [path([points], closed, casing), path([points], closed, core)];
  }
  if (!closed) {
    const items = [path([points], false, look.openStroke ?? look.stroke)];
    if (line.role === "grain") items.push(path(arrowHeads(points, ARROW_MM * k), false, look.stroke));
    if (line.role === "cut") items.push(path(scissors(points, SCISSORS_MM * k), false, TICK_PEN));
    return items;
  }
  const items: PlacedItem[] = [];
  if (look.fill !== undefined) {
    const shift = line.clothShiftMm === undefined ? {} : { clothShiftMm: line.clothShiftMm };
    items.push({ ...path([points], true), fill: look.fill, ...shift } as PlacedItem);
  }
  if (look.hatch !== undefined) {
    const { angleDeg, spacingMm, stroke } = look.hatch;
    items.push(path(hatchLines(points, angleDeg, spacingMm), false, stroke));
  }
  if (look.stroke !== undefined) items.push(path([points], true, look.stroke));
  if (line.role === "cut") items.push(path(scissors(points, SCISSORS_MM * k), false, TICK_PEN));
  return items;
}

export function placeCircle(circle: Circle, toPage: (at: Point) => Point, scale: number): PlacedItem[] {
  const { fill, stroke } = LOOKS[circle.role];
  return [
    {
      kind: "circle",
      ...commonOf(circle),
      centre: toPage(circle.centre),
      radiusMm: circle.radiusMm * scale,
      ...(fill === undefined ? {} : { fill }),
      ...(stroke === undefined ? {} : { stroke }),
    },
  ];
}

/** Open arrow heads at both ends of a line. */
function arrowHeads(points: readonly Point[], sizeMm: number): Point[][] {
  const first = points[0];
  const second = points[1];
  const last = points.at(-1);
  const before = points.at(-2);
  if (!first || !second || !last || !before) return [];
  return [head(first, second, sizeMm), head(last, before, sizeMm)];
}

function head(tip: Point, towards: Point, sizeMm: number): Point[] {
  const angle = Math.atan2(towards[1] - tip[1], towards[0] - tip[0]);
  const arm = (turn: number): Point => [
    tip[0] + sizeMm * Math.cos(angle + turn),
    tip[1] + sizeMm * Math.sin(angle + turn),
  ];
  return [arm(0.32), tip, arm(-0.32)];
}

const FINGER_RING: readonly Point[] = Array.from({ length: 11 }, (_, i): Point => {
  const turn = (i / 10) * 2 * Math.PI;
  return [0.16 * Math.cos(turn) - 0.34, 0.13 * Math.sin(turn)];
});

/** A pair of scissors lying on the first stretch of a cutting line, blades along it. */
function scissors(points: readonly Point[], sizeMm: number): Point[][] {
  const from = points[0];
  const to = points[1];
  if (from === undefined || to === undefined) return [];
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (length < 4 * sizeMm) return [];
  const ux = (to[0] - from[0]) / length;
  const uy = (to[1] - from[1]) / length;
  const middle = 1.6 * sizeMm;
  const onLine = ([x, y]: Point): Point => [
    from[0] + ux * (middle + x * sizeMm) - uy * y * sizeMm,
    from[1] + uy * (middle + x * sizeMm) + ux * y * sizeMm,
  ];
  const half = (side: 1 | -1): Point[][] => [
    FINGER_RING.map(([x, y]) => onLine([x, y + 0.2 * side])),
    [onLine([-0.2, 0.13 * side]), onLine([0.5, -0.14 * side])],
  ];
  return [...half(1), ...half(-1)];
}
