import { fineText } from "../../units/index.ts";
import { counted } from "../../words/index.ts";
import type { Primitive } from "../model.ts";
import { type ActionDrawing, type ActionInput, figureName, measured, stacked, word } from "./action-input.ts";
import { arc, arrow, shape, smooth, stroke } from "./kit.ts";

const YS = [18, 32, 46];

/** A strip over one column of rings: its left edge sewn, the other still open. */
export function drawSewSleeve({ action }: ActionInput<"sew-sleeve">): ActionDrawing {
  const beside = fineText(action.besideMm);
  const rings = YS.flatMap((y): Primitive[] => [
    shape("ring", arc([50, y], 3.4, 0, 360, 24)),
    shape("liningCloth", arc([50, y], 2, 0, 360, 24)),
  ]);
  const lift = smooth([
    [62, 8],
    [66, 24],
    [63, 40],
    [66, 58],
  ]);
  return {
    title: "Sew a sleeve over the rings",
    primitives: [
      shape("liningCloth", [
        [6, 4],
        [94, 4],
        [94, 62],
        [6, 62],
      ]),
      stroke("crease", [
        [6, 4],
        [94, 4],
        [94, 62],
        [6, 62],
        [6, 4],
      ]),
      ...rings,
      shape("wrongSide", [
        [38, 8],
        [46, 8],
        [46, 58],
        [38, 58],
      ]),
      shape(
        "wrongSide",
        [[46, 8], ...lift, [46, 58]].map(([x = 0, y = 0]) => [x - 14, y] as const),
      ),
      stroke("stitch", [
        [39.6, 8],
        [39.6, 58],
      ]),
      ...arrow(
        smooth([
          [70, 30],
          [62, 24],
          [53, 30],
        ]),
      ),
      ...stacked([71, 32], ["open for", "the cord"], { figure: false }),
      word([34, 34], "sewn", "end"),
      ...measured([39.6, 65.4], [50, 65.4], beside, [45, 70.4]),
      figureName([70, 56], counted(action.rings, "ring"), "start"),
    ],
    facts: [{ label: "Seam beside the rings", text: beside }],
  };
}
