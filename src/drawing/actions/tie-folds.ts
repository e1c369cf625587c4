import { counted } from "../../words/index.ts";
import type { Primitive } from "../model.ts";
import { type ActionDrawing, type ActionInput, stacked } from "./action-input.ts";
import { shape, smooth, stroke } from "./kit.ts";

const [LEFT, WIDE] = [8, 84];
const [TOP, BOTTOM] = [8, 46];

/** The raised shade from the front, its folds held by soft strips, each tied in a bow below. */
export function drawTieFolds({ action }: ActionInput<"tie-folds">): ActionDrawing {
  const shown = Math.min(7, Math.max(1, action.folds));
  const strips = Math.max(2, action.ties);
  return {
    title: "Tie the folds",
    primitives: [
      shape("board", [
        [LEFT, 3],
        [LEFT + WIDE, 3],
        [LEFT + WIDE, TOP],
        [LEFT, TOP],
      ]),
      shape("faceCloth", [
        [LEFT, TOP],
        [LEFT + WIDE, TOP],
        [LEFT + WIDE, BOTTOM],
        [LEFT, BOTTOM],
      ]),
      stroke("finishedEdge", [
        [LEFT, TOP],
        [LEFT, BOTTOM],
        [LEFT + WIDE, BOTTOM],
        [LEFT + WIDE, TOP],
      ]),
      ...Array.from({ length: shown }, (_, i): Primitive => {
        const y = TOP + ((BOTTOM - TOP) * (i + 0.6)) / shown;
        return stroke("fold", [
          [LEFT, y],
          [LEFT + WIDE, y],
        ]);
      }),
      ...Array.from({ length: strips }, (_, i) => bow(LEFT + (WIDE * (i + 0.5)) / strips)).flat(),
      ...stacked([50, 64], [counted(strips, "soft strip"), "loose, for several days"], {
        anchor: "middle",
      }),
    ],
    facts: [{ label: "Strips", text: String(strips) }],
  };
}

function bow(x: number): Primitive[] {
  const y = BOTTOM + 3;
  return [
    shape("bandCloth", [
      [x - 1.8, 3],
      [x + 1.8, 3],
      [x + 1.8, y],
      [x - 1.8, y],
    ]),
    stroke("crease", [
      [x - 1.8, 3],
      [x - 1.8, y],
    ]),
    stroke("crease", [
      [x + 1.8, 3],
      [x + 1.8, y],
    ]),
    shape(
      "bandCloth",
      smooth(
        [
          [x, y],
          [x - 6, y - 3.4],
          [x - 7, y + 2],
        ],
        true,
        5,
      ),
    ),
    shape(
      "bandCloth",
      smooth(
        [
          [x, y],
          [x + 6, y - 3.4],
          [x + 7, y + 2],
        ],
        true,
        5,
      ),
    ),
    stroke(
      "crease",
      smooth([
        [x, y],
        [x - 6, y - 3.4],
        [x - 7, y + 2],
        [x, y],
        [x + 7, y + 2],
        [x + 6, y - 3.4],
        [x, y],
      ]),
    ),
    stroke("crease", [
      [x, y],
      [x - 3, y + 7],
    ]),
    stroke("crease", [
      [x, y],
      [x + 3, y + 7],
    ]),
  ];
}
