import { counted } from "../../words/index.ts";
import type { Primitive } from "../model.ts";
import {
  type ActionDrawing,
  type ActionInput,
  figureName,
  lengthsIn,
  measured,
  stacked,
} from "./action-input.ts";
import { grip } from "./hands.ts";
import { arc, arrow, put, shape, smooth, stroke } from "./kit.ts";
import { lockFromSide } from "./lock-parts.ts";

/** The lock under its place on the board, cords slack through it, a screwdriver from below. */
export function drawScrewLock({ action, units }: ActionInput<"screw-lock">): ActionDrawing {
  const { facing } = action;
  const place = lengthsIn(units)(action.fromEndMm);
  // Drawn for a lock at the right end; one at the left is its mirror.
  const flip = facing === "left";
  const x = (at: number) => (flip ? 100 - at : at);
  return {
    title: "Screw the lock on",
    primitives: [
      ...put([...board(), ...screwdriver()], flip ? { at: [100, 0], flip: true } : {}),
      ...put(lockFromSide([0, 0], { toothed: "right", gap: 3 }), {
        at: [x(62), 29],
        deg: 180,
        flip: !flip,
      }),
      ...put(cords(), flip ? { at: [100, 0], flip: true } : {}),
      ...stacked([x(82), 33], ["toothed", "outwards"], { anchor: flip ? "end" : "start", figure: false }),
      ...put(
        arrow([
          [82, 24.6],
          [93, 24.6],
        ]),
        flip ? { at: [100, 0], flip: true } : {},
      ),
      ...measured([flip ? 14 : 2, 7], [x(62), 7], `${place} from the left end`, [50, 2]),
      figureName([x(24), 74], counted(action.screws, "screw")),
    ],
    facts: [
      { label: "Middle of the lock from the left end", text: place },
      { label: "Toothed roller", text: `to the ${facing}` },
      { label: "Screws", text: String(action.screws) },
    ],
  };
}

function board(): Primitive[] {
  return [
    shape("board", [
      [2, 12],
      [86, 12],
      [86, 19],
      [2, 19],
    ]),
    shape("eye", arc([30, 24], [3, 3.4], 0, 360, 24)),
    shape("skin", arc([30, 24], [1.9, 2.3], 0, 360, 24)),
    stroke("dividerWire", [
      [30, 19],
      [30, 20.8],
    ]),
  ];
}

function cords(): Primitive[] {
  return [0, 1].map((i) =>
    stroke(
      "cord",
      smooth([
        [4, 23 + i * 1.6],
        [30, 24 + i * 1.4],
        [50, 25.4 + i],
        [60.6 + i * 1.6, 28],
        [61.4 + i * 1.6, 44],
        [60 + i * 4, 58],
        [63 + i * 3, 70],
      ]),
      { cord: i + 1 },
    ),
  );
}

function screwdriver(): Primitive[] {
  return [
    stroke("dividerWire", [
      [48.5, 30],
      [48.5, 22],
    ]),
    shape("tool", [
      [47.4, 32],
      [49.6, 32],
      [49.6, 46],
      [47.4, 46],
    ]),
    shape(
      "tool",
      smooth(
        [
          [45.6, 46],
          [51.4, 46],
          [52, 62],
          [45, 62],
        ],
        true,
        4,
      ),
    ),
    ...put(grip(), { at: [48.5, 54.6], deg: -96, size: 0.6, flip: true }),
    ...arrow(
      smooth([
        [43, 40],
        [45, 43],
        [52, 43],
        [54, 39],
      ]),
    ),
  ];
}
