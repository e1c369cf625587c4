import type { Point, Primitive } from "../model.ts";
import { cordTag } from "../sheets/shapes.ts";
import { type ActionDrawing, type ActionInput, figureName, lengthsIn, word } from "./action-input.ts";
import { arc, arrow, shape, stroke } from "./kit.ts";

const [LEFT, WIDE] = [10, 80];
const MOST = 8;
/** How far the hem of the drawing hangs low at its far end. */
const FALL = 7;

/** The back of the lower edge: a level on the hem, the cord of the low side taken up at its knot. */
export function drawLevelHem({ action, units }: ActionInput<"level-hem">): ActionDrawing {
  const within = lengthsIn(units)(action.withinMm);
  const all = action.columnsMm.map((mm, i) => ({ number: i + 1, share: mm / action.widthMm }));
  const shown = all.length <= MOST ? all : [...all.slice(0, MOST - 1), ...all.slice(-1)];
  // From the back the left edge as seen from the room is at the right.
  const xOf = (share: number) => LEFT + WIDE * (1 - share);
  const hem = (x: number) => 44 + (FALL * (x - LEFT)) / WIDE;
  const corner = (x: number): Point => [x, hem(x)];
  return {
    title: "Bring the hem level",
    primitives: [
      shape("liningCloth", [[LEFT, 4], [LEFT + WIDE, 4], corner(LEFT + WIDE), corner(LEFT)]),
      stroke("finishedEdge", [[LEFT, 4], corner(LEFT), corner(LEFT + WIDE), [LEFT + WIDE, 4]]),
      stroke("level", [
        [4, 44],
        [97, 44],
      ]),
      ...shown.flatMap(({ number, share }): Primitive[] => {
        const x = xOf(share);
        return [
          stroke(
            "cord",
            [
              [x, 7],
              [x, hem(x) - 10],
            ],
            { cord: number },
          ),
          shape("ring", arc([x, hem(x) - 10], 2.2, 0, 360, 20)),
          cordTag([x, 4], number, [0, -3]),
        ];
      }),
      ...spirit(corner(34), (Math.atan2(FALL, WIDE) * 180) / Math.PI),
      ...arrow([
        [LEFT + WIDE + 5, 40],
        [LEFT + WIDE + 5, 26],
      ]),
      word([LEFT + WIDE + 2, 58], "low: take up here", "end"),
      figureName([LEFT, 70], `level within ${within}`, "start"),
    ],
    facts: [
      { label: "Level from end to end within", text: within },
      {
        label: "Cords from the left, seen from the room",
        text: action.columnsMm.map(lengthsIn(units)).join(", "),
      },
    ],
  };
}

function spirit([x, y]: Point, deg: number): Primitive[] {
  const turn = (deg * Math.PI) / 180;
  const at = (u: number, v: number): Point => [
    x + u * Math.cos(turn) - v * Math.sin(turn),
    y + u * Math.sin(turn) + v * Math.cos(turn),
  ];
  return [
    shape("tool", [at(-20, 1), at(24, 1), at(24, 8), at(-20, 8)]),
    shape("glass", [at(-5, 2.6), at(9, 2.6), at(9, 6.4), at(-5, 6.4)]),
    stroke("crease", [at(0, 2.6), at(0, 6.4)]),
    stroke("crease", [at(4, 2.6), at(4, 6.4)]),
    // The bubble runs to the high side.
    shape("skin", arc(at(-1.6, 4.5), [2.4, 1.3], 0, 360, 20)),
    stroke("crease", arc(at(-1.6, 4.5), [2.4, 1.3], 0, 360, 20)),
  ];
}
