import type { Facet, Point, Primitive } from "../model.ts";
import { type Camera, seenBy } from "./camera.ts";

/** Cords, loops and wands, dark enough to be seen on glass and wall; battens on the face. */
export const CORD = "#b5ab97";
export const BATTEN = "#c39a63";
const CORD_MM = 4;
const ROUND = 10;

/**
 * What hangs in one upright plane as faces: lines as wide as a bundle of cords, rounds and areas as they are, words left
 * out, nothing below the foot of the picture.
 */
export function lineFaces(
  primitives: readonly Primitive[],
  { z, bottom, colour }: { z: number; bottom: number; colour: string },
  camera: Camera,
): Facet[] {
  const see = seenBy(camera);
  const face = (points: readonly Point[]): Facet => ({
    points: points.map(([x, y]) => see([x, Math.min(y, bottom), z]).at),
    colour,
    light: 0.92,
  });
  return primitives.flatMap((one): Facet[] => {
    if (one.kind === "circle") return [face(roundOf(one.centre, one.radiusMm))];
    if (one.kind !== "polyline") return [];
    if (one.closed === true) return [face(one.points)];
    return one.points.slice(1).flatMap((to, i) => {
      const from = one.points[i] as Point;
      return from[1] >= bottom && to[1] >= bottom ? [] : [face(bandOf(from, to))];
    });
  });
}

function roundOf([x, y]: Point, radius: number): Point[] {
  return Array.from({ length: ROUND }, (_, k): Point => {
    const turn = (2 * Math.PI * k) / ROUND;
    return [x + radius * Math.cos(turn), y + radius * Math.sin(turn)];
  });
}

function bandOf([x, y]: Point, [u, v]: Point): Point[] {
  const length = Math.hypot(u - x, v - y) || 1;
  const [dx, dy] = [((v - y) / length) * (CORD_MM / 2), ((x - u) / length) * (CORD_MM / 2)];
  return [
    [x + dx, y + dy],
    [u + dx, v + dy],
    [u - dx, v - dy],
    [x - dx, y - dy],
  ];
}
