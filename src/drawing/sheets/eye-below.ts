import type { BoardPoint } from "../../shade-plan/index.ts";
import type { Polyline } from "../model.ts";
import type { ToPage } from "./tube-below.ts";

/** A screw eye seen from below, edge on: its ring stands across the board, its wire rounded at both ends. */
export function eyeBelow(
  { xMm, zMm }: BoardPoint,
  reachMm: number,
  wireMm: number,
  toPage: ToPage,
  part: string,
): Polyline {
  const [x, top] = toPage(xMm, zMm + reachMm);
  const [, bottom] = toPage(xMm, zMm - reachMm);
  const half = wireMm / 2;
  const round = Math.min(wireMm / 2, (bottom - top) / 4);
  return {
    kind: "polyline",
    role: "eye",
    closed: true,
    part,
    points: [
      [x - half, top + round],
      [x - half * 0.5, top],
      [x + half * 0.5, top],
      [x + half, top + round],
      [x + half, bottom - round],
      [x + half * 0.5, bottom],
      [x - half * 0.5, bottom],
      [x - half, bottom - round],
    ],
  };
}
