import type { Point, Primitive } from "../model.ts";
import { arc, beside, put, shape, smooth, stroke } from "./kit.ts";

/** Hands in line, of our own: a right hand, fingertips at the origin, the arm to the right. Turned and mirrored by `put`. */

/** A finger along its bones, from its root to its tip, `wide` at either end. */
function finger(bones: readonly Point[], wide: readonly [root: number, tip: number]): Point[] {
  const spine = smooth(bones, false, 8);
  const side = (way: 1 | -1) => beside(spine, (share) => ((wide[0] + (wide[1] - wide[0]) * share) / 2) * way);
  const tip = spine.at(-1) ?? [0, 0];
  const before = spine.at(-2) ?? [0, 0];
  const angle = (Math.atan2(tip[1] - before[1], tip[0] - before[0]) * 180) / Math.PI;
  return [
    ...side(1),
    ...arc(tip, wide[1] / 2, angle + 90, angle - 90, 10).slice(1, -1),
    ...side(-1).reverse(),
  ];
}

/** A sleeve's end at the wrist. */
function cuff(top: Point, bottom: Point): Primitive[] {
  const [dx, dy] = [(bottom[1] - top[1]) * 0.34, (top[0] - bottom[0]) * 0.34];
  const out = 0.1;
  const [ox, oy] = [(top[0] - bottom[0]) * out, (top[1] - bottom[1]) * out];
  return [
    shape("tool", [
      [top[0] + ox, top[1] + oy],
      [top[0] + dx + ox, top[1] + dy + oy],
      [bottom[0] + dx - ox, bottom[1] + dy - oy],
      [bottom[0] - ox, bottom[1] - oy],
    ]),
  ];
}

/** Parts of a hand with one outline round all of them. */
function joined(...parts: readonly Point[][]): Primitive[] {
  return [...parts.map((part) => shape("hand", part)), ...parts.map((part) => shape("skin", part))];
}

/** Thumb and forefinger close on the origin, the others curled behind them. */
export function pinch(): Primitive[] {
  const thumb = finger(
    [
      [54, 19],
      [36, 16],
      [19, 8.4],
      [1.6, 2],
    ],
    [12, 5.8],
  );
  return [
    ...joined(
      finger(
        [
          [37, 14],
          [25, 13],
          [17, 17],
          [21, 22],
        ],
        [9, 7],
      ),
    ),
    ...joined(
      finger(
        [
          [36, 8],
          [22, 3],
          [12, 9],
          [15, 16],
        ],
        [9, 7],
      ),
    ),
    ...joined(
      smooth(
        [
          [35, -5],
          [46, -6],
          [58, 1],
          [66, 4],
          [66, 22],
          [56, 25],
          [46, 25.4],
          [36, 20],
          [33, 6],
        ],
        true,
      ),
      finger(
        [
          [42, 0.5],
          [23, -9],
          [9, -7],
          [1.5, -1.6],
        ],
        [11, 5.6],
      ),
    ),
    ...joined(thumb),
    shape(
      "skin",
      smooth(
        [
          [45, 13],
          [56, 9],
          [63, 12],
          [63, 21],
          [55, 24.4],
          [48, 24.2],
        ],
        true,
      ),
    ),
    stroke(
      "skin",
      smooth([
        [26, -8.6],
        [24.4, -6.2],
        [24.6, -4],
      ]),
    ),
    stroke(
      "skin",
      smooth([
        [7, -7],
        [3.4, -4.6],
        [2, -4.8],
      ]),
    ),
    ...cuff([66, 3], [66, 23]),
  ];
}

/** A fist about a bar that runs from left to right through the origin, seen on its back, the arm up and to the right. */
export function grip(): Primitive[] {
  const roots = [-10.4, -3.6, 3.4, 10];
  const fingers = roots.map((x, i) =>
    finger(
      [
        [x, -7],
        [x - 0.6, 1],
        [x, 6 - 0.5 * i],
      ],
      [7.6, i === 3 ? 6 : 6.8],
    ),
  );
  return [
    ...joined(
      finger(
        [
          [-8, -12],
          [-17, -7],
          [-20, 2],
          [-17, 6.4],
        ],
        [9, 6.4],
      ),
    ),
    ...joined(
      smooth(
        [
          [-14.4, -5],
          [-13, -13],
          [-4, -20],
          [10, -27],
          [19, -22],
          [16, -10],
          [14, -3],
          [0, -1],
        ],
        true,
      ),
      ...fingers,
    ),
    ...[0, 1, 2].map((i) => {
      const x = ((roots[i] ?? 0) + (roots[i + 1] ?? 0)) / 2;
      return stroke(
        "skin",
        smooth([
          [x, -4.4],
          [x - 0.4, 1],
          [x, 5.4],
        ]),
      );
    }),
    ...roots.map((x) => stroke("skin", arc([x + 0.4, -6.6], [2.2, 1.2], 200, 340, 6))),
    ...put(cuff([0, -7.6], [0, 7.6]), { at: [15, -25.6], deg: -58 }),
  ];
}

/** A hand laid flat, seen from above, the middle fingertip at the origin. */
export function flatHand(): Primitive[] {
  return [
    ...joined(
      finger(
        [
          [40, 13],
          [18, 15.5],
          [7.5, 17],
        ],
        [8, 5],
      ),
      finger(
        [
          [40, 8],
          [16, 8.4],
          [4, 9],
        ],
        [7.8, 5.6],
      ),
      finger(
        [
          [40, 2],
          [16, 0.6],
          [2.8, 0],
        ],
        [8, 5.8],
      ),
      finger(
        [
          [40, -3],
          [18, -7.4],
          [6, -9.6],
        ],
        [8, 5.6],
      ),
      smooth(
        [
          [33, -7],
          [42, -8],
          [54, -4],
          [66, -2],
          [66, 15],
          [52, 17],
          [40, 17.4],
          [33, 15],
        ],
        true,
      ),
      finger(
        [
          [58, 2],
          [44, -11],
          [32, -17.4],
          [25, -18.4],
        ],
        [12, 6],
      ),
    ),
    stroke(
      "skin",
      smooth([
        [44, -5],
        [48, 0],
        [49, 6],
      ]),
    ),
    ...cuff([66, -2.4], [66, 15.4]),
  ];
}
