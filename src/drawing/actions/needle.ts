import type { Point, Primitive } from "../model.ts";
import { shape, stroke } from "./kit.ts";

/** A needle from its point to its eye. */
export function needle(point: Point, eye: Point): Primitive[] {
  const length = Math.hypot(eye[0] - point[0], eye[1] - point[1]) || 1;
  const [ux, uy] = [(eye[0] - point[0]) / length, (eye[1] - point[1]) / length];
  const at = (along: number, across: number): Point => [
    point[0] + ux * along - uy * across,
    point[1] + uy * along + ux * across,
  ];
  return [
    shape("tool", [at(0, 0), at(4, 0.5), at(length, 0.9), at(length + 1, 0), at(length, -0.9), at(4, -0.5)]),
    stroke("skin", [at(length - 3, 0), at(length - 0.8, 0)]),
  ];
}
