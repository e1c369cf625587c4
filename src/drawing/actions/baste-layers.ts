import { counted } from "../../words/index.ts";
import type { Point, Primitive } from "../model.ts";
import { type ActionDrawing, type ActionInput, lengthsIn, stacked, word } from "./action-input.ts";
import { pinch } from "./hands.ts";
import { arrow, put, shape, smooth, stroke } from "./kit.ts";
import { needle } from "./needle.ts";

const LEFT = 6;
const WIDE = 74;
const [TOP, BOTTOM] = [10, 54];
/** More columns than this are drawn by their first and last. */
const MOST = 6;

/** Layers with one corner laid back, long stitches along the columns that are marked, a needle in the next. */
export function drawBasteLayers({ action, units }: ActionInput<"baste-layers">): ActionDrawing {
  const length = lengthsIn(units);
  const every = length(action.everyMm);
  const shown = Math.min(MOST, Math.max(1, action.columnsMm.length));
  const xs = Array.from({ length: shown }, (_, i) => LEFT + (WIDE * (i + 0.55)) / (shown + 0.1));
  const at = Math.max(0, Math.floor((shown - 1) / 2));
  const x = xs[at] ?? LEFT;
  return {
    title: "Baste the layers together",
    primitives: [
      ...stack(action.layers),
      ...xs.flatMap((column, i): Primitive[] => [
        stroke("markLine", [
          [column, TOP],
          [column, BOTTOM],
        ]),
        ...(i < at ? stitches(column, BOTTOM) : i === at ? stitches(column, 23) : []),
      ]),
      stroke(
        "thread",
        smooth([
          [x, 22],
          [x + 4, 23.6],
          [x + 9, 19],
          [x + 14, 20],
        ]),
      ),
      ...needle([x + 1.5, 26.5], [x + 14, 19]),
      ...put(pinch(), { at: [x + 14, 19], deg: -4, size: 0.62 }),
      ...arrow([
        [x - 5, 24],
        [x - 5, 38],
      ]),
      ...stacked(
        [LEFT + WIDE / 2, 64],
        [`every ${every} or so`, `along ${counted(action.columnsMm.length, "column")}`],
        {
          anchor: "middle",
        },
      ),
      word([LEFT + 3, 5.4], "long and loose, one thread of the face", "start"),
    ],
    facts: [
      { label: "Along", text: `${action.columnsMm.length} marked columns` },
      { label: "A stitch every", text: `${every} or so` },
    ],
  };
}

function stack(layers: number): Primitive[] {
  const roles =
    layers > 2
      ? (["faceCloth", "wrongSide", "liningCloth"] as const)
      : (["faceCloth", "liningCloth"] as const);
  return roles.flatMap((role, i): Primitive[] => {
    // Each upper layer is laid back a little farther at the lower right corner, so that those below show.
    const cut = i * 11;
    const points: Point[] = [
      [LEFT, TOP],
      [LEFT + WIDE, TOP],
      [LEFT + WIDE, BOTTOM - cut],
      [LEFT + WIDE - cut * 1.25, BOTTOM],
      [LEFT, BOTTOM],
    ];
    const edge = i === 0 ? "finishedEdge" : "crease";
    return [shape(role, points), stroke(edge, [...points, [LEFT, TOP]])];
  });
}

/** Long stitches with short gaps, down to where the needle is. */
function stitches(x: number, to: number): Primitive[] {
  const all: Primitive[] = [];
  for (let y = TOP + 2; y + 4 <= to; y += 7.4)
    all.push(
      stroke("thread", [
        [x + 0.5, y],
        [x - 0.5, Math.min(to, y + 4.6)],
      ]),
    );
  return all;
}
