import type { Point, Primitive } from "../model.ts";
import {
  type ActionDrawing,
  type ActionInput,
  figureName,
  lengthsIn,
  measured,
  word,
} from "./action-input.ts";
import { grip } from "./hands.ts";
import { arc, arrow, put, shape, smooth, stroke } from "./kit.ts";

const AWAY: Point = [24, -25];
const back = ([x, y]: Point): Point => [x + AWAY[0], y + AWAY[1]];

/** The hem as its turned end shows it, and the iron on it. */
export function drawPressHem({ action, units }: ActionInput<"press-hem">): ActionDrawing {
  const text = lengthsIn(units)(action.turnMm);
  const double = action.turns === 2;
  const [fold, inner, low, top] = [66, 44, 58, double ? 52.4 : 54.6];
  const cloth: Point[] = [[2, low], [fold, low], back([fold, low]), back([2, low])];
  const turned: Point[] = [[inner, top], [fold, top], back([fold, top]), back([inner, top])];
  const profile: Point[] = double
    ? [
        [2, low],
        [fold - 1.4, low],
        ...arc([fold - 1.4, low - 2.8], 2.8, 90, -90, 8),
        [inner + 1, top],
        ...arc([inner + 1, top + 1.4], 1.4, 270, 90, 6),
        [fold - 4, top + 2.8],
      ]
    : [[2, low], [fold - 1.4, low], ...arc([fold - 1.4, low - 1.7], 1.7, 90, -90, 8), [inner, top]];
  return {
    title: `Press the ${action.edge} hem`,
    primitives: [
      shape("wrongSide", cloth),
      shape("faceCloth", turned),
      stroke("finishedEdge", [back([fold + 1, top + 1.6]), [fold + 1, top + 1.6]]),
      stroke("fold", [[inner, top], back([inner, top])]),
      stroke("finishedEdge", profile),
      ...iron([66, 30]),
      ...arrow(
        smooth([
          [84, 44],
          [93, 37],
          [97, 28],
        ]),
      ),
      ...measured([inner, 63.5], [fold, 63.5], double ? `${text} + ${text}` : text, [
        (inner + fold) / 2,
        68.6,
      ]),
      ...(double
        ? turnArrows(fold, inner, low)
        : arrow(
            smooth([
              [78, 60],
              [80, 53.5],
              [72, 50.6],
            ]),
          )),
      word([34, 43], "wrong side up"),
    ],
    facts: [{ label: double ? "Turned twice, each time by" : "Turned by", text }],
  };
}

/** First the raw edge in, then the fold over it. */
function turnArrows(fold: number, inner: number, low: number): Primitive[] {
  return [
    ...arrow(
      smooth([
        [fold + 13, low + 1],
        [fold + 16, low - 6],
        [fold + 7, low - 8.6],
      ]),
    ),
    figureName([fold + 18.4, low - 1], "2"),
    ...arrow(
      smooth([
        [inner - 3, low - 1.6],
        [inner - 6.4, low - 4.2],
        [inner - 2, low - 6.6],
      ]),
      2.6,
    ),
    figureName([inner - 9.4, low - 3.4], "1"),
  ];
}

function iron(at: Point): Primitive[] {
  const sole: Point[] = smooth(
    [
      [-22, 6],
      [-10, 6],
      [8, 6],
      [22, 6],
      [14, -1],
      [2, -5],
      [-14, -6],
      [-21, -5],
    ],
    true,
    4,
  );
  return [
    ...put(
      [
        shape("tool", sole),
        stroke("tool", [
          [-21.6, 3],
          [17, 3],
        ]),
      ],
      { at },
    ),
    ...put(
      [
        stroke(
          "tool",
          smooth([
            [-13, -6],
            [-14, -14],
            [-6, -16],
            [8, -14],
            [10, -7],
          ]),
        ),
      ],
      { at },
    ),
    ...put(
      [
        shape(
          "tool",
          smooth(
            [
              [-15.6, -16],
              [-12, -18.4],
              [10, -16],
              [11, -13],
              [-10, -13.4],
            ],
            true,
            4,
          ),
        ),
      ],
      { at },
    ),
    ...put(grip(), { at: [at[0] - 2, at[1] - 15.6], size: 0.72 }),
  ];
}
