import { type ActionDrawing, word } from "./action-input.ts";
import { pinch } from "./hands.ts";
import { arrow, put, shape, smooth, stroke } from "./kit.ts";

/** One thread drawn out from selvedge to selvedge, scissors along the line it leaves. */
export function drawSquareCloth(): ActionDrawing {
  return {
    title: "Square the end",
    primitives: [
      shape(
        "clothOnBolt",
        smooth(
          [
            [8, 12],
            [24, 15],
            [44, 9],
            [60, 12],
            [60, 12],
          ],
          false,
          4,
        ).concat([
          [60, 66],
          [8, 66],
        ]),
      ),
      stroke("selvedge", [
        [9.6, 12],
        [9.6, 66],
      ]),
      stroke("selvedge", [
        [58.4, 12],
        [58.4, 66],
      ]),
      stroke("cut", [
        [8, 26],
        [40, 26],
      ]),
      stroke("hidden", [
        [40, 26],
        [60, 26],
      ]),
      stroke(
        "thread",
        smooth([
          [40, 26],
          [56, 26],
          [64, 24],
          [68, 22],
        ]),
      ),
      ...put(pinch(), { at: [67, 22], deg: -8, size: 0.6 }),
      ...arrow([
        [66, 12],
        [80, 9],
      ]),
      shape("tool", [
        [9.6, 62],
        [9.6, 30],
        [38, 62],
      ]),
      shape("clothOnBolt", [
        [13.6, 58],
        [13.6, 40],
        [29.6, 58],
      ]),
      word([34, 74], "square to the selvedge"),
      word([64, 44], "one thread", "start"),
    ],
    facts: [{ label: "Line", text: "along one thread, at right angles to the selvedge" }],
  };
}
