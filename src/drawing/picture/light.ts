import type { Camera, PicturePoint } from "./camera.ts";

/** Where the light of a high window beside the eye comes from: left, above, before the shade. A picture's choice, no measure. */
const KEY_AROUND_RAD = -0.62;
const KEY_ABOVE_RAD = 0.68;
export const KEY: PicturePoint = [
  Math.sin(KEY_AROUND_RAD) * Math.cos(KEY_ABOVE_RAD),
  -Math.sin(KEY_ABOVE_RAD),
  Math.cos(KEY_AROUND_RAD) * Math.cos(KEY_ABOVE_RAD),
];
/** Flat cloth that hangs facing the room is as bright as its own colour. */
export const KEY_SHARE = 0.86;
export const ROOM_SHARE = 0.24;
export const SKY_SHARE = 0.36;

/** Beyond its own colour cloth grows only so much brighter: woven threads do not shine. */
const GLARE = 0.45;

/** The view of the key light: from so far that its rays run alike. */
export function keyCamera(aim: PicturePoint): Camera {
  return { aim, distanceMm: 1e6, aroundRad: KEY_AROUND_RAD, aboveRad: KEY_ABOVE_RAD };
}

/** Light on a face: what the key light leaves it, and of the room’s own light as much as it lies open to. */
export function lightOn(normal: PicturePoint, keyShare: number, openShare: number): number {
  const key = Math.max(0, normal[0] * KEY[0] + normal[1] * KEY[1] + normal[2] * KEY[2]);
  const sky = (1 - normal[1]) / 2;
  const light = KEY_SHARE * key * keyShare + openShare ** 1.5 * (ROOM_SHARE + SKY_SHARE * sky);
  return light > 1 ? 1 + GLARE * (light - 1) : light;
}
