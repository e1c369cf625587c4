import type { Primitive } from "../model.ts";
import { type ActionDrawing, type ActionInput, lengthsIn, stacked, word } from "./action-input.ts";
import { arrow, shape, stroke } from "./kit.ts";

/** Three widths, three heights, both diagonals. */
export function drawMeasureOpening({ action, units }: ActionInput<"measure-opening">): ActionDrawing {
  const length = lengthsIn(units);
  const [width, height] = [length(action.widthMm), length(action.heightMm)];
  const both = (from: readonly [number, number], to: readonly [number, number]): Primitive[] => [
    ...arrow([from, to], 2.8),
    ...arrow([to, from], 2.8),
  ];
  return {
    title: "Measure the opening",
    primitives: [
      shape("wall", [
        [2, 2],
        [66, 2],
        [66, 74],
        [2, 74],
      ]),
      shape("glass", [
        [10, 9],
        [58, 9],
        [58, 68],
        [10, 68],
      ]),
      stroke("opening", [
        [10, 9],
        [58, 68],
      ]),
      stroke("opening", [
        [58, 9],
        [10, 68],
      ]),
      ...[14, 38.5, 63].flatMap((y) => both([11, y], [57, y])),
      ...[15.4, 34, 52.6].flatMap((x) => both([x, 10], [x, 67])),
      ...stacked([70, 14], [width, "3 widths"]),
      ...stacked([70, 36], [height, "3 heights"]),
      word([70, 60], "2 diagonals", "start"),
    ],
    facts: [
      { label: "Width", text: width },
      { label: "Height", text: height },
    ],
  };
}
