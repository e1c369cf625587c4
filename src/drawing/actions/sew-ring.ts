import { counted } from "../../words/index.ts";
import type { Point, Primitive } from "../model.ts";
import { type ActionDrawing, type ActionInput, figureName, word } from "./action-input.ts";
import { pinch } from "./hands.ts";
import { arc, arrow, put, shape, smooth, stroke } from "./kit.ts";
import { needle } from "./needle.ts";

const RING: Point = [34, 27];
const OUTER = 9.4;

/** A ring held down with a few stitches over its lower edge, and how they go through the layers. */
export function drawSewRing({ action }: ActionInput<"sew-ring">): ActionDrawing {
  const { rows, columns, onto } = action;
  const count = `${rows} rows × ${columns} = ${counted(rows * columns, "ring")}`;
  return {
    title: "Sew a ring",
    primitives: [
      ...ground(onto),
      ...ring(),
      ...[-20, 0, 20, 40].map((turn) => stitch(turn + 80)),
      stroke(
        "thread",
        smooth([
          [RING[0] + 2, RING[1] + OUTER + 3.4],
          [44, 41],
          [52, 37],
          [61, 27],
        ]),
      ),
      ...needle([43.4, 36.4], [62, 26]),
      ...put(pinch(), { at: [60, 27], deg: -12, size: 0.62 }),
      ...arrow(
        smooth([
          [52, 44],
          [47, 46],
          [41, 43],
        ]),
      ),
      word(
        [6, 7],
        onto === "pocket"
          ? "on the edge of the pocket"
          : onto === "tape"
            ? "through the tape"
            : "on the mark",
        "start",
      ),
      ...section(),
      figureName([50, 74.6], count),
    ],
    facts: [
      { label: "Rings", text: count },
      { label: "Stitches", text: "four or five to each, only one thread of the face; the bottom row twice" },
    ],
  };
}

function ground(onto: ActionInput<"sew-ring">["action"]["onto"]): Primitive[] {
  const cloth = shape("liningCloth", [
    [2, 2],
    [98, 2],
    [98, 50],
    [2, 50],
  ]);
  const frame = stroke("crease", [
    [2, 2],
    [98, 2],
    [98, 50],
    [2, 50],
    [2, 2],
  ]);
  const y = RING[1] + OUTER;
  if (onto === "pocket")
    return [
      cloth,
      frame,
      shape("liningCloth", [
        [2, y - 9],
        [98, y - 9],
        [98, y + 1],
        [2, y + 1],
      ]),
      stroke("crease", [
        [2, y + 1],
        [98, y + 1],
      ]),
      stroke("stitch", [
        [2, y - 9],
        [98, y - 9],
      ]),
    ];
  if (onto === "tape")
    return [
      cloth,
      frame,
      shape("sleeve", [
        [RING[0] - 6, 2],
        [RING[0] + 6, 2],
        [RING[0] + 6, 50],
        [RING[0] - 6, 50],
      ]),
    ];
  return [
    cloth,
    frame,
    stroke("markLine", [
      [2, y],
      [98, y],
    ]),
    stroke("markLine", [
      [RING[0], 2],
      [RING[0], 50],
    ]),
  ];
}

function ring(): Primitive[] {
  return [
    shape("hand", arc(RING, OUTER, 0, 360, 40)),
    shape("skin", arc(RING, OUTER, 0, 360, 40)),
    shape("hand", arc(RING, OUTER - 2.6, 0, 360, 40)),
    shape("liningCloth", arc(RING, OUTER - 2.6, 0, 360, 40)),
  ];
}

/** Over the ring's wire from within to without. */
function stitch(deg: number): Primitive {
  const turn = (deg * Math.PI) / 180;
  const at = (radius: number): Point => [
    RING[0] + radius * Math.cos(turn),
    RING[1] + radius * Math.sin(turn),
  ];
  return stroke("thread", [at(OUTER - 3.8), at(OUTER + 1.6)]);
}

/** Seen from the side: through every layer, but only one thread of the face. */
function section(): Primitive[] {
  const y = 60;
  const wire = (x: number) => [
    shape("hand", arc([x, y - 2], 1.5, 0, 360, 16)),
    shape("skin", arc([x, y - 2], 1.5, 0, 360, 16)),
  ];
  return [
    shape("liningCloth", [
      [8, y],
      [56, y],
      [56, y + 2.6],
      [8, y + 2.6],
    ]),
    stroke("crease", [
      [8, y],
      [56, y],
    ]),
    shape("faceCloth", [
      [8, y + 2.6],
      [56, y + 2.6],
      [56, y + 6.4],
      [8, y + 6.4],
    ]),
    stroke("crease", [
      [8, y + 2.6],
      [56, y + 2.6],
    ]),
    stroke("finishedEdge", [
      [8, y + 6.4],
      [56, y + 6.4],
    ]),
    ...wire(34),
    stroke(
      "thread",
      smooth([
        [30.6, y],
        [31.2, y + 3.6],
        [34, y + 5.2],
        [36.8, y + 3.6],
        [37.4, y],
        [34, y - 4.6],
        [30.6, y],
      ]),
    ),
    word([59, y + 0.6], "lining", "start"),
    word([59, y + 6.6], "face, one thread", "start"),
  ];
}
