import { counted } from "../../words/index.ts";
import type { Point, Primitive } from "../model.ts";
import { type ActionDrawing, type ActionInput, lengthsIn, measured, stacked, word } from "./action-input.ts";
import { pinch } from "./hands.ts";
import { arc, arrow, put, rope, shape, smooth, stroke } from "./kit.ts";

const UP: Point = [22, -16];
const LEFT = 4;
const WIDE = 70;
const FRONT = 56;
const MOST = 6;
const at = (share: number, across: number): Point => [
  LEFT + WIDE * share + UP[0] * across,
  FRONT + UP[1] * across,
];

/**
 * The board underside up, its wall edge near: each eye turned until its ring stands across the board, a cord drawn along
 * through those that are in.
 */
export function drawSetEye({ action, units }: ActionInput<"set-eye">): ActionDrawing {
  const length = lengthsIn(units);
  const all = action.placesMm;
  const shown = all.length <= MOST ? all : [...all.slice(0, MOST - 1), ...all.slice(-1)];
  const shares = shown.map((mm) => mm / action.boardMm);
  const turned = Math.max(0, shares.length - 1);
  const across = 0.5;
  const [first] = shares;
  const lastShare = shares[turned] ?? 0.5;
  const cordTo = shares.length > 1 ? (shares[turned - 1] ?? lastShare) + 0.05 : lastShare - 0.05;
  return {
    title: "Set the eyes across the board",
    primitives: [
      shape("board", [at(0, 0), at(1, 0), at(1, 1), at(0, 1)]),
      shape("board", [at(0, 0), at(1, 0), [at(1, 0)[0], FRONT + 5], [at(0, 0)[0], FRONT + 5]]),
      shape("board", [at(1, 0), at(1, 1), [at(1, 1)[0], at(1, 1)[1] + 5], [at(1, 0)[0], FRONT + 5]]),
      ...shares.slice(0, turned).flatMap((share) => eye(at(share, across), false)),
      ...(first === undefined || turned === 0
        ? []
        : rope([ring(at(-0.06, across)), ring(at(cordTo, across))], 1.6)),
      ...shares.slice(0, turned).flatMap((share) => nearHalf(at(share, across))),
      ...eye(at(lastShare, across), true),
      ...turning(ring(at(lastShare, across))),
      ...measured(at(0, 0), at(0, across), length(action.fromWallMm), [1, 43]),
      word([at(0.5, 0)[0], FRONT + 10.4], "wall edge, near you"),
      ...stacked(
        [2, 6],
        [counted(action.count, "eye"), `the first ${length(all[0] ?? 0)} from the left end`],
      ),
    ],
    facts: [
      { label: "Eyes", text: String(action.count) },
      { label: "From the wall edge", text: length(action.fromWallMm) },
      { label: "From the left end", text: all.map(length).join(", ") },
    ],
  };
}

/** Middle of the ring of an eye screwed in here. */
function ring([x, y]: Point): Point {
  return [x, y - 8.4];
}

/** A ring that stands across the board is seen from its side; one that still turns is seen open. */
function eye([x, y]: Point, open: boolean): Primitive[] {
  const [cx, cy] = ring([x, y]);
  const wire: Point = open ? [4.6, 4.6] : [2, 4.6];
  return [
    shape("screw", arc([x, y], [1.6, 0.9], 0, 360, 16)),
    stroke("dividerWire", [
      [x, y],
      [x, cy + 4.6],
    ]),
    stroke("dividerWire", arc([cx, cy], wire, 0, 360, 32)),
  ];
}

/** The near half of the wire, over the cord that runs through. */
function nearHalf(at: Point): Primitive[] {
  return [stroke("dividerWire", arc(ring(at), [2, 4.6], 90, 270, 16))];
}

function turning([x, y]: Point): Primitive[] {
  return [
    ...put(pinch(), { at: [x + 4.4, y - 1.4], deg: -34, size: 0.5 }),
    ...arrow(
      smooth([
        [x - 8.4, y + 5],
        [x - 10.4, y - 2],
        [x - 3, y - 7.4],
        [x + 3, y - 7.6],
      ]),
    ),
  ];
}
