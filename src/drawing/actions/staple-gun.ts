import type { Point, Primitive } from "../model.ts";
import { grip } from "./hands.ts";
import { put, shape, smooth, stroke } from "./kit.ts";

/** A staple gun in the hand, its nose down at the given place. */
export function stapleGun(nose: Point, size = 1): Primitive[] {
  const body: Point[] = [
    [-3, 0],
    [4, 0],
    [4.6, -6],
    [30, -9],
    [31, -14],
    [4, -19],
    [-3, -16],
  ];
  return [
    ...put(
      [
        stroke(
          "tool",
          smooth([
            [2, -17],
            [10, -26],
            [24, -25],
            [31, -17],
          ]),
        ),
        shape("tool", body),
      ],
      {
        at: nose,
        size,
      },
    ),
    ...put(grip(), { at: [nose[0] + 19 * size, nose[1] - 19 * size], size: 0.66 * size, deg: 8 }),
  ];
}

/** A staple that is in, seen along the face it went into. */
export function staple([x, y]: Point, wide = 4): Primitive {
  return stroke("dividerWire", [
    [x - wide / 2, y],
    [x + wide / 2, y],
  ]);
}
