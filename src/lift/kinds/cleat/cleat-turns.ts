import { type SpacePoint, turnRad } from "../../../mechanics/index.ts";

/** A place under the board: level across the shade and below the top line, mm. */
export interface EyePlace {
  acrossMm: number;
  downMm: number;
}

/** Angles through which one cord slides, rad: at the eyes above columns, and over the last eye. */
export interface CleatTurns {
  eyesRad: number;
  turnRad: number;
}

/**
 * Turns of a cord that comes straight up into the first of these places, runs from each to the next, and leaves the
 * last straight down. Where it has only one place, its own eye is the last: it turns about.
 */
export function cleatTurns(places: readonly EyePlace[]): CleatTurns {
  const points = places.map(({ acrossMm, downMm }): SpacePoint => ({ x: acrossMm, y: downMm, z: 0 }));
  const [first] = points;
  const last = points.at(-1);
  if (first === undefined || last === undefined || points.length === 1)
    return { eyesRad: 0, turnRad: Math.PI };
  const below = (point: SpacePoint): SpacePoint => ({ ...point, y: point.y + 1 });
  let eyesRad = 0;
  points.slice(0, -1).forEach((point, i) => {
    eyesRad += turnRad(points[i - 1] ?? below(first), point, points[i + 1] ?? last);
  });
  return { eyesRad, turnRad: turnRad(points.at(-2) ?? first, last, below(last)) };
}
