import type { Point, Primitive } from "../model.ts";
import {
  type ActionDrawing,
  type ActionInput,
  figureName,
  lengthsIn,
  measured,
  word,
} from "./action-input.ts";
import { arrow, put, shape, smooth, stroke } from "./kit.ts";

const SIDE = 27;
const HEM = 9;

/** The bottom corner three times: the slant drawn, the corner folded in, both hems folded so that they meet. */
export function drawMitreCorner({ action, units }: ActionInput<"mitre-corner">): ActionDrawing {
  const length = lengthsIn(units);
  const [above, inMm] = [length(action.aboveMm), length(action.inMm)];
  return {
    title: "Mitre a bottom corner",
    primitives: [
      ...put(marked(), { at: [8, 18] }),
      ...put(folded(), { at: [42, 18] }),
      ...put(met(), { at: [76, 18] }),
      ...arrow(
        [
          [35.6, 31],
          [40, 31],
        ],
        2.8,
      ),
      ...arrow(
        [
          [69.6, 31],
          [74, 31],
        ],
        2.8,
      ),
      ...measured([5, 18 + SIDE - 2 * HEM], [5, 18 + SIDE - HEM], "A", [1, 18 + SIDE - 1.5 * HEM]),
      ...measured([8 + HEM, 18 + SIDE + 3], [8 + 2 * HEM, 18 + SIDE + 3], "B", [
        8 + 1.5 * HEM,
        18 + SIDE + 8.4,
      ]),
      figureName([2, 66], `A ${above}`, "start"),
      figureName([42, 66], `B ${inMm}`, "start"),
      figureName([8 + SIDE / 2, 11], "1"),
      figureName([42 + SIDE / 2, 11], "2"),
      figureName([76 + SIDE / 2 - HEM / 2, 11], "3"),
      word([76 + SIDE / 2 - HEM / 2, 48], "edges meet"),
    ],
    facts: [
      { label: "A, up the cut side edge from the hem line", text: above },
      { label: "B, along the cut lower edge from the crease of the side", text: inMm },
    ],
  };
}

/** Wrong side up, creases pressed and opened again, the slant through the place where they cross. */
function marked(): Primitive[] {
  const corner: Point[] = [
    [0, 0],
    [SIDE, 0],
    [SIDE, SIDE],
    [0, SIDE],
  ];
  return [
    shape("wrongSide", corner),
    stroke("fold", [
      [HEM, 0],
      [HEM, SIDE],
    ]),
    stroke("fold", [
      [0, SIDE - HEM],
      [SIDE, SIDE - HEM],
    ]),
    stroke("markLine", [
      [0, SIDE - 2 * HEM],
      [2 * HEM, SIDE],
    ]),
    ...arrow(
      smooth([
        [2, SIDE - 2],
        [7.6, SIDE - 7.4],
        [12.6, SIDE - 13],
      ]),
      3,
    ),
  ];
}

function folded(): Primitive[] {
  return [
    shape("wrongSide", [
      [0, 0],
      [SIDE, 0],
      [SIDE, SIDE],
      [2 * HEM, SIDE],
      [0, SIDE - 2 * HEM],
    ]),
    shape("faceCloth", [
      [0, SIDE - 2 * HEM],
      [2 * HEM, SIDE],
      [2 * HEM, SIDE - 2 * HEM],
    ]),
    stroke("finishedEdge", [
      [0, SIDE - 2 * HEM],
      [2 * HEM, SIDE],
    ]),
    stroke("crease", [
      [0, SIDE - 2 * HEM],
      [2 * HEM, SIDE - 2 * HEM],
      [2 * HEM, SIDE],
    ]),
    stroke("fold", [
      [HEM, 0],
      [HEM, SIDE - 2 * HEM],
    ]),
    stroke("fold", [
      [2 * HEM, SIDE - HEM],
      [SIDE, SIDE - HEM],
    ]),
    ...arrow(
      [
        [1, 5],
        [HEM + 3, 5],
      ],
      2.8,
    ),
    ...arrow(
      [
        [SIDE - 4, SIDE - 1],
        [SIDE - 4, SIDE - HEM - 3],
      ],
      2.8,
    ),
  ];
}

function met(): Primitive[] {
  const [x, y, right] = [0, SIDE - HEM, SIDE - HEM];
  return [
    shape("wrongSide", [
      [x, 0],
      [right, 0],
      [right, y],
      [x, y],
    ]),
    shape("faceCloth", [
      [x, 0],
      [HEM, 0],
      [HEM, y - HEM],
      [x, y],
    ]),
    shape("faceCloth", [
      [x, y],
      [HEM, y - HEM],
      [right, y - HEM],
      [right, y],
    ]),
    stroke("crease", [
      [HEM, 0],
      [HEM, y - HEM],
      [right, y - HEM],
    ]),
    stroke("finishedEdge", [
      [x, 0],
      [x, y],
      [right, y],
    ]),
    stroke("crease", [
      [x, y],
      [HEM, y - HEM],
    ]),
  ];
}
