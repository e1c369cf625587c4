import type { Point } from "../model.ts";
import { type ActionDrawing, type ActionInput, lengthsIn, stacked, word } from "./action-input.ts";
import { arrow, shape, smooth, stroke } from "./kit.ts";
import { staple, stapleGun } from "./staple-gun.ts";

const UP: Point = [15, -11];
const back = ([x, y]: Point, times = 1): Point => [x + UP[0] * times, y + UP[1] * times];

/** The board on its cover, top up: one long edge already over it, the other on its way, the ends to be folded. */
export function drawCoverBoard({ action, units }: ActionInput<"cover-board">): ActionDrawing {
  const length = lengthsIn(units);
  const size = `${length(action.widthMm)} × ${length(action.lengthMm)}`;
  const [left, right, top, bottom] = [16, 80, 46, 52];
  const topFace: Point[] = [[left, top], [right, top], back([right, top]), back([left, top])];
  const lap: Point[] = [
    back([left, top], 0.45),
    back([right, top], 0.45),
    back([right, top]),
    back([left, top]),
  ];
  const staples: Point[] = [26, 40, 54].map((x) => back([x, top], 0.62));
  return {
    title: "Cover the board",
    primitives: [
      // The cover's near part lies on the table, its ends free beside the board.
      shape("wrongSide", [
        [left - 10, bottom + 12],
        [right + 4, bottom + 12],
        [right + 10, bottom],
        [left - 4, bottom],
      ]),
      stroke("crease", [
        [left - 10, bottom + 12],
        [right + 4, bottom + 12],
      ]),
      shape("board", topFace),
      shape("board", [
        [left, top],
        [right, top],
        [right, bottom],
        [left, bottom],
      ]),
      shape("board", [[right, top], back([right, top]), back([right, bottom]), [right, bottom]]),
      shape("faceCloth", lap),
      stroke("crease", [lap[0] ?? UP, lap[1] ?? UP]),
      stroke("crease", [back([left, top]), back([right, top])]),
      ...staples.map((at) => staple(at)),
      ...stapleGun(back([68, top], 0.62), 0.74),
      ...arrow(
        smooth([
          [30, bottom + 9],
          [26, bottom + 1],
          [31, top - 3],
        ]),
      ),
      word([44, bottom + 8.4], `edge turned under ${length(action.turnMm)}`, "start"),
      ...stacked([4, 6], [size, "cover, cut"]),
    ],
    facts: [
      { label: "Cover, cut", text: size },
      { label: "Free edge turned under", text: length(action.turnMm) },
      { label: "Staples", text: "on the top of the board only" },
    ],
  };
}
