import type { Point, Primitive } from "../model.ts";
import { callout } from "../sheets/shapes.ts";
import { type ActionDrawing, type ActionInput, lengthsIn, measured, stacked, word } from "./action-input.ts";
import { arrow, shape, smooth, stroke } from "./kit.ts";
import { stapleGun } from "./staple-gun.ts";

/** The shade on its board, from the end: cloth over the top and a staple in it, or the two halves of a tape. */
export function drawFixShade({ action, units }: ActionInput<"fix-shade">): ActionDrawing {
  const beyond = lengthsIn(units)(action.beyondMm);
  return action.how === "staple" ? stapled(beyond) : pressed(beyond);
}

const BOARD: Point[] = [
  [30, 40],
  [74, 40],
  [74, 54],
  [30, 54],
];

function end(): Primitive[] {
  return [
    shape("board", BOARD),
    stroke(
      "gather",
      smooth([
        [34, 43],
        [48, 45],
        [70, 43],
      ]),
    ),
    stroke(
      "gather",
      smooth([
        [34, 50],
        [50, 48],
        [70, 51],
      ]),
    ),
    word([52, 60], "board, from its end"),
    word([26, 66], "room", "end"),
    word([82, 66], "wall", "start"),
  ];
}

function stapled(beyond: string): ActionDrawing {
  return {
    title: "Staple the shade to the board",
    primitives: [
      ...end(),
      stroke("finishedEdge", [
        [28.6, 72],
        [28.6, 40.6],
        [30.6, 38.4],
        [68, 38.4],
      ]),
      ...[40, 62].map((x) =>
        stroke("dividerWire", [
          [x - 2, 43],
          [x - 2, 37.4],
          [x + 2, 37.4],
          [x + 2, 43],
        ]),
      ),
      ...stapleGun([58, 19], 0.8),
      ...measured([30, 32], [68, 32], beyond, [37, 26]),
      callout([28.8, 38.8], "top line", [-5, -3], { yields: true }),
      ...arrow([
        [58, 21],
        [58, 30],
      ]),
    ],
    facts: [{ label: "From the top line back over the board", text: beyond }],
  };
}

function pressed(beyond: string): ActionDrawing {
  return {
    title: "Press the shade to the board",
    primitives: [
      ...end(),
      shape("toothedRoller", [
        [27.4, 41],
        [30, 41],
        [30, 52],
        [27.4, 52],
      ]),
      shape("roller", [
        [14.6, 41],
        [17.2, 41],
        [17.2, 52],
        [14.6, 52],
      ]),
      stroke("finishedEdge", [
        [9.6, 72],
        [9.6, 40],
        [12, 38.6],
        [14, 40],
        [14, 54],
      ]),
      ...arrow([
        [18.6, 46.5],
        [26, 46.5],
      ]),
      ...stacked([2, 24], [beyond, "turned to the back; hooks on the board, loops on the shade"]),
    ],
    facts: [{ label: "Turned to the back above the top line", text: beyond }],
  };
}
