import { counted } from "../../words/index.ts";
import type { Point, Primitive } from "../model.ts";
import { type ActionDrawing, type ActionInput, stacked } from "./action-input.ts";
import { arc, arrow, rope, shape, stroke } from "./kit.ts";

/**
 * A bowline on the bottom ring, and the way of the cord through the rings above. What lies over what is the knot: the
 * standing part makes a loop with the end's side on top; the end comes through the ring, up through the loop from behind,
 * round behind the standing part and down through the loop again.
 */
export function drawTieRing({ action }: ActionInput<"tie-ring">): ActionDrawing {
  return {
    title: "Tie the cord to the bottom ring",
    primitives: [...column(action.rings), ...knot(), ...words(action)],
    facts: [
      { label: "Knot", text: "bowline, or another that does not slip" },
      { label: "Rings of a column", text: String(action.rings) },
    ],
  };
}

function words({ rings, cords }: ActionInput<"tie-ring">["action"]): Primitive[] {
  return [
    ...stacked([80, 70], [counted(rings, "ring"), cords > 1 ? `each of ${cords} cords` : "1 cord"], {
      anchor: "middle",
    }),
    ...stacked([22, 12], ["end left", "long enough", "to tie again"], { anchor: "end", figure: false }),
  ];
}

function column(rings: number): Primitive[] {
  const shown = Math.min(5, Math.max(1, rings));
  const ys = Array.from({ length: shown }, (_, i) => 58 - i * (46 / Math.max(1, shown - 1 || 1)));
  const ring = (y: number) => [
    shape("ring", arc([80, y], 3, 0, 360, 24)),
    shape("skin", arc([80, y], 1.8, 0, 360, 24)),
  ];
  return [
    shape("liningCloth", [
      [66, 2],
      [94, 2],
      [94, 62],
      [66, 62],
    ]),
    stroke("finishedEdge", [
      [66, 2],
      [66, 62],
      [94, 62],
      [94, 2],
    ]),
    ...ys.flatMap(ring),
    stroke("cord", [
      [80, 58],
      [80, 4],
    ]),
    ...arrow([
      [86, 50],
      [86, 20],
    ]),
    stroke("leader", [
      [76, 58],
      [46, 66],
    ]),
  ];
}

const WIDE = 3.4;

/** The cord from the board: down, round the loop, over itself, and on to the ring. */
const STANDING: readonly Point[] = [
  [36, 0],
  [36, 12],
  [35.6, 22],
  [29.6, 28],
  [26.6, 35],
  [30, 41.4],
  [37, 42.8],
  [43.4, 40.6],
  [46, 34],
  [43, 27.4],
  [36, 23.4],
  [27.4, 22.6],
  [20, 25],
  [16.4, 34],
  [18, 46],
  [25, 56],
  [31, 62.4],
  [36, 66],
];
/** The end, out of the ring: up through the loop, round behind the standing part, down through the loop. */
const END: readonly Point[] = [
  [34, 66],
  [40, 60],
  [43.5, 52],
  [40.8, 44],
  [38.6, 38],
  [40, 31],
  [44, 25],
  [46.4, 18.5],
  [44, 12.6],
  [36, 10],
  [28, 12.6],
  [25.4, 19],
  [27, 26],
  [31, 32],
  [33.2, 38],
  [34, 47],
  [32, 55],
];

function knot(): Primitive[] {
  const wire = arc([36, 66], 9, 0, 360, 40);
  const hole = arc([36, 66], 6.4, 0, 360, 40);
  const part = (path: readonly Point[], from: number, to: number) => rope(path, WIDE, [from, to]);
  return [
    ...part(END, 0, 5),
    ...part(END, 7, 11),
    ...part(END, 13, 16),
    shape("hand", wire),
    shape("skin", wire),
    shape("hand", hole),
    shape("skin", hole),
    ...part(STANDING, 0, 6),
    ...part(STANDING, 6, 17),
    ...part(END, 4, 8),
    ...part(END, 10, 14),
  ];
}
