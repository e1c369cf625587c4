import type { Point, Primitive } from "../model.ts";
import { type ActionDrawing, type ActionInput, lengthsIn, measured, stacked } from "./action-input.ts";
import { arrow, put, rope, shape, smooth, stroke } from "./kit.ts";

/** The cleat with the cord wound on in figures of eight, and how high it sits. */
export function drawWindCleat({ action, units }: ActionInput<"wind-cleat">): ActionDrawing {
  const high = lengthsIn(units)(action.aboveFloorMm);
  const flip = action.side === "left";
  const there = (primitives: Primitive[]) =>
    flip ? put(primitives, { at: [100, 0], flip: true }) : primitives;
  const x = (at: number) => (flip ? 100 - at : at);
  return {
    title: "Wind the cord on its cleat",
    primitives: [
      ...there([...behind(), ...cleat(), ...across(), ...setting()]),
      ...measured([x(92), 30], [x(92), 68], "", [x(92), 50]).slice(0, 3),
      ...stacked([x(78), 76], [high, "or more above the floor"], { anchor: "middle" }),
      stroke("floor", [
        [x(62), 68],
        [x(99), 68],
      ]),
      ...stacked(
        [x(22), 80],
        [`${action.side} side,`, action.below === "lock" ? "below the lock" : "below the last eye"],
        {
          anchor: "middle",
          figure: false,
        },
      ),
    ],
    facts: [
      { label: "Above the floor, at least", text: high },
      { label: "Side", text: action.side },
    ],
  };
}

const MIDDLE: Point = [26, 38];

function cleat(): Primitive[] {
  const horn = smooth(
    [
      [22.5, 32],
      [23, 22],
      [21, 12],
      [25, 8.6],
      [28.4, 14],
      [28.6, 24],
      [29.5, 32],
      [29.5, 44],
      [28.6, 52],
      [28.4, 62],
      [25, 67.4],
      [21, 64],
      [23, 54],
      [22.5, 44],
    ],
    true,
    5,
  );
  return [shape("tool", horn)];
}

const ROUNDS = [0, 1];

/** One figure of eight about the middle, `i` rounds out: from the top, down across, round below, up across. */
function eight(i: number): Point[] {
  const [x, y] = MIDDLE;
  const [out, up] = [9 + i * 2.6, 17 + i * 3];
  return [
    [x, y - up],
    [x - out + 2.4, y - up + 1.4],
    [x - out, y - up + 7],
    [x, y],
    [x + out, y + up - 7],
    [x + out - 2.4, y + up - 1.4],
    [x, y + up],
    [x - out + 2.4, y + up - 1.4],
    [x - out, y + up - 7],
    [x, y],
    [x + out, y - up + 7],
    [x + out - 2.4, y - up + 1.4],
    [x, y - up],
  ];
}

/** Behind the horns, which hold it. */
function behind(): Primitive[] {
  return [
    ...rope(
      [
        [31, 0],
        [34, 9],
        [36.6, 18],
        [37.2, 26],
      ],
      WIDE,
    ),
    ...ROUNDS.flatMap((i) => [
      ...rope(eight(i), WIDE, [0, 2]),
      ...rope(eight(i), WIDE, [4, 8]),
      ...rope(eight(i), WIDE, [10, 12]),
    ]),
  ];
}

/** Across the middle, each over the one before. */
function across(): Primitive[] {
  return [
    ...ROUNDS.flatMap((i) => [...rope(eight(i), WIDE, [1, 5]), ...rope(eight(i), WIDE, [8, 11])]),
    ...arrow(
      smooth([
        [43, 46],
        [46, 54],
        [41, 62],
        [33, 66],
      ]),
    ),
    ...arrow(
      smooth([
        [9, 30],
        [6, 22],
        [11, 13],
        [19, 9],
      ]),
    ),
  ];
}

const WIDE = 2.4;

/** Where it is: the window, the cleat and the floor, small. */
function setting(): Primitive[] {
  return [
    shape("glass", [
      [64, 8],
      [86, 8],
      [86, 50],
      [64, 50],
    ]),
    shape("faceCloth", [
      [64, 8],
      [86, 8],
      [86, 24],
      [64, 24],
    ]),
    stroke("finishedEdge", [
      [64, 8],
      [64, 24],
      [86, 24],
      [86, 8],
    ]),
    shape("board", [
      [63, 6],
      [87, 6],
      [87, 8.6],
      [63, 8.6],
    ]),
    stroke("cord", [
      [84, 9],
      [90, 22],
      [92, 30],
    ]),
    shape("tool", [
      [91.3, 27],
      [92.7, 27],
      [92.7, 33],
      [91.3, 33],
    ]),
    stroke("leader", [
      [39, 38],
      [90, 30],
    ]),
  ];
}
