import type { Point } from "../model.ts";

export type PicturePoint = readonly [x: number, y: number, z: number];

/** From where a picture is seen: x, y as on the shade, z out into the room, mm. */
export interface Camera {
  /** What stands in the middle of the picture, and keeps its size. */
  aim: PicturePoint;
  distanceMm: number;
  /** Turned to the right of the shade's middle, and raised above it, rad. */
  aroundRad: number;
  aboveRad: number;
}

/** A point as it is seen: on the picture in mm at the distance of the aim, and how near it is. */
export interface SeenPoint {
  at: Point;
  nearMm: number;
}

/** Cloth of an impossible shade can reach the eye: it is seen no larger than from here, as a share of the distance. */
const NEAREST_SHARE = 0.2;

export function seenBy({ aim, distanceMm, aroundRad, aboveRad }: Camera): (place: PicturePoint) => SeenPoint {
  const [ca, sa] = [Math.cos(aroundRad), Math.sin(aroundRad)];
  const [cb, sb] = [Math.cos(aboveRad), Math.sin(aboveRad)];
  return ([x, y, z]) => {
    const [dx, dy, dz] = [x - aim[0], y - aim[1], z - aim[2]];
    const right = dx * ca - dz * sa;
    const towards = dx * sa + dz * ca;
    const down = dy * cb + towards * sb;
    const nearMm = towards * cb - dy * sb;
    const scale = distanceMm / Math.max(NEAREST_SHARE * distanceMm, distanceMm - nearMm);
    return { at: [aim[0] + right * scale, aim[1] + down * scale], nearMm };
  };
}

/** Unit vector from the aim to the eye. */
export function towardsEye({ aroundRad, aboveRad }: Camera): PicturePoint {
  return [
    Math.sin(aroundRad) * Math.cos(aboveRad),
    -Math.sin(aboveRad),
    Math.cos(aroundRad) * Math.cos(aboveRad),
  ];
}
