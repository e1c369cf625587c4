import type { Point, Primitive } from "../model.ts";
import { arc, shape } from "./kit.ts";

/** Half the inside of the housing, seen from its side. */
const HALF = 15;
const RADIUS = 5.4;
const TEETH = 12;

export interface LockState {
  /** Side of the toothed roller as drawn. */
  toothed: "left" | "right";
  /** Between the rollers. */
  gap: number;
}

/** The lock from its side, open face up: housing, smooth roller, toothed roller and the gap between them. */
export function lockFromSide([x, y]: Point, { toothed, gap }: LockState): Primitive[] {
  const out = gap / 2 + RADIUS;
  const way = toothed === "right" ? 1 : -1;
  const smoothAt: Point = [x - way * out, y];
  const toothedAt: Point = [x + way * out, y];
  const cog: Point[] = Array.from({ length: TEETH * 2 }, (_, i): Point => {
    const angle = (i / (TEETH * 2)) * 2 * Math.PI;
    const radius = i % 2 === 0 ? RADIUS : RADIUS - 1;
    return [toothedAt[0] + radius * Math.cos(angle), toothedAt[1] + radius * Math.sin(angle)];
  });
  return [
    shape("housing", [
      [x - HALF - 2, y - 9],
      [x - HALF, y - 9],
      [x - HALF, y + 8],
      [x + HALF, y + 8],
      [x + HALF, y - 9],
      [x + HALF + 2, y - 9],
      [x + HALF + 2, y + 10],
      [x - HALF - 2, y + 10],
    ]),
    shape("roller", arc(smoothAt, RADIUS, 0, 360, 32)),
    shape("screw", arc(smoothAt, 1.2, 0, 360, 12)),
    shape("toothedRoller", cog),
    shape("screw", arc(toothedAt, 1.2, 0, 360, 12)),
  ];
}
