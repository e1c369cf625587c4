import { type ActionDrawing, stacked } from "./action-input.ts";
import { pinch } from "./hands.ts";
import { arc, arrow, put, rope, shape, smooth, stroke } from "./kit.ts";

/** The child-safety tag tied on, to be read with the shade lowered. */
export function drawFixTag(): ActionDrawing {
  return {
    title: "Put the tag on",
    primitives: [
      shape("faceCloth", [
        [2, 2],
        [56, 2],
        [56, 60],
        [2, 60],
      ]),
      stroke("finishedEdge", [
        [56, 2],
        [56, 60],
        [2, 60],
      ]),
      stroke("stitch", [
        [2, 52],
        [56, 52],
      ]),
      shape("label", [
        [22, 26],
        [48, 26],
        [48, 66],
        [22, 66],
      ]),
      shape("label", arc([35, 31], 1.8, 0, 360, 20)),
      ...[40, 45, 50, 55, 60].map((y, i) =>
        stroke("dimension", [
          [26, y],
          [i === 4 ? 38 : 44, y],
        ]),
      ),
      stroke("pullCurve", [
        [26, 36],
        [44, 36],
      ]),
      ...rope(
        [
          [35, 31],
          [33, 22],
          [36, 14],
          [39, 22],
          [35.4, 30],
        ],
        1.6,
      ),
      ...put(pinch(), { at: [38, 15], deg: -12, size: 0.6 }),
      ...arrow(
        smooth([
          [60, 34],
          [56, 40],
          [50, 42],
        ]),
      ),
      ...stacked([60, 47], ["read with the", "shade let down"], { figure: false }),
    ],
    facts: [{ label: "Where", text: "at the lower edge, read with the shade lowered" }],
  };
}
