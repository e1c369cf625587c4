import { counted } from "../../words/index.ts";
import type { Point, Primitive } from "../model.ts";
import { type ActionDrawing, type ActionInput, lengthsIn, stacked } from "./action-input.ts";
import { arrow, shape, stroke } from "./kit.ts";

const UP: Point = [14, -10];
const [LEFT, WIDE] = [6, 70];

/** The folded shade on its board, up to its brackets, or up under the head of the opening. */
export function drawHangBoard({ action, units }: ActionInput<"hang-board">): ActionDrawing {
  const length = lengthsIn(units);
  const xs = action.placesMm.map((mm) => LEFT + (WIDE * mm) / action.boardMm);
  const onBrackets = action.on === "brackets";
  const one = onBrackets ? "bracket" : "screw";
  return {
    title: onBrackets ? "Set the board on its brackets" : "Screw the board up",
    primitives: [
      ...(onBrackets ? brackets(xs) : head()),
      ...board(onBrackets ? 24 : 36, onBrackets ? [] : xs),
      ...(onBrackets
        ? [LEFT + 10, LEFT + WIDE - 10].flatMap((x) =>
            arrow([
              [x, 9],
              [x, 17],
            ]),
          )
        : xs.flatMap((x) =>
            arrow([
              [x + UP[0] / 2, 74],
              [x + UP[0] / 2, 64],
            ]),
          )),
      ...stacked(
        [50, onBrackets ? 78 : 82],
        [counted(xs.length, one), `${places(action.placesMm.map(length))} from the board’s left end`],
        { anchor: "middle" },
      ),
    ],
    facts: [
      {
        label: `${onBrackets ? "Brackets" : "Screws"} from the board’s left end`,
        text: action.placesMm.map(length).join(", "),
      },
    ],
  };
}

/** All of a few, the first and the last of many. */
function places(all: string[]): string {
  return all.length <= 3 ? all.join(" · ") : `${all[0]} · … · ${all.at(-1)}`;
}

/** Board with the shade folded up under its front edge and tied. */
function board(y: number, screws: readonly number[]): Primitive[] {
  const right = LEFT + WIDE;
  const folds = [0, 1, 2, 3].map((i) => y + 7 + i * 5);
  return [
    shape("board", [
      [LEFT, y],
      [right, y],
      [right + UP[0], y + UP[1]],
      [LEFT + UP[0], y + UP[1]],
    ]),
    shape("board", [
      [right, y],
      [right + UP[0], y + UP[1]],
      [right + UP[0], y + UP[1] + 5],
      [right, y + 5],
    ]),
    shape("faceCloth", [
      [LEFT, y],
      [right, y],
      [right, y + 26],
      [LEFT, y + 26],
    ]),
    stroke("finishedEdge", [
      [LEFT, y],
      [right, y],
      [right, y + 26],
      [LEFT, y + 26],
      [LEFT, y],
    ]),
    ...folds.map((fold) =>
      stroke("fold", [
        [LEFT, fold],
        [right, fold],
      ]),
    ),
    ...[0.25, 0.75].map((share) => {
      const x = LEFT + WIDE * share;
      return shape("bandCloth", [
        [x - 1.6, y],
        [x + 1.6, y],
        [x + 1.6, y + 26],
        [x - 1.6, y + 26],
      ]);
    }),
    ...screws.map((x) =>
      stroke("hidden", [
        [x + UP[0] / 2, y + UP[1] / 2],
        [x + UP[0] / 2, y - 12],
      ]),
    ),
  ];
}

function brackets(xs: readonly number[]): Primitive[] {
  const line = 46;
  return [
    shape("wall", [
      [LEFT + 12, 4],
      [98, 4],
      [98, 70],
      [LEFT + 12, 70],
    ]),
    ...xs.flatMap((x): Primitive[] => {
      const at = x + UP[0];
      return [
        shape("bracket", [
          [at - 1.6, line],
          [at + 1.6, line],
          [at + 1.6, line + 17],
          [at - 1.6, line + 17],
        ]),
        shape("bracket", [
          [at - 1.6, line],
          [at + 1.6, line],
          [at + 1.6 - UP[0], line - UP[1]],
          [at - 1.6 - UP[0], line - UP[1]],
        ]),
      ];
    }),
  ];
}

function head(): Primitive[] {
  const right = LEFT + WIDE;
  return [
    shape("wall", [
      [LEFT - 4, 2],
      [right + 20, 2],
      [right + 20, 16],
      [LEFT - 4, 16],
    ]),
    stroke("opening", [
      [LEFT - 4, 16],
      [right + 20, 16],
    ]),
  ];
}
