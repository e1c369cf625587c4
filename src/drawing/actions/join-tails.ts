import type { Primitive } from "../model.ts";
import { type ActionDrawing, type ActionInput, lengthsIn, measured, stacked } from "./action-input.ts";
import { arc, arrow, put, shape, smooth, stroke } from "./kit.ts";
import { lockFromSide } from "./lock-parts.ts";

const MOST = 8;

/** All tails into one connector that comes apart under a pull; one tail goes on from it. */
export function drawJoinTails({ action, units }: ActionInput<"join-tails">): ActionDrawing {
  const below = lengthsIn(units)(action.belowMm);
  const shown = Math.min(MOST, action.cords);
  return {
    title: "Join the tails",
    primitives: [
      ...(action.from === "lock" ? lock() : lastEye()),
      ...Array.from({ length: shown }, (_, i) => tail(i, shown)),
      ...connector(),
      ...measured([60, 22], [60, 44], "", [60, 33]).slice(0, 3),
      ...stacked([63, 31], [below, "or less"]),
      ...stacked([27, 31], [`${action.cords} cords`, "just tight"], { anchor: "end" }),
      ...arrow(
        [
          [47, 58],
          [47, 70],
        ],
        3,
      ),
      ...stacked([51, 60], ["comes apart", "under a pull"], { figure: false }),
    ],
    facts: [
      { label: "Cords", text: String(action.cords) },
      { label: `Below the ${action.from === "lock" ? "lock" : "last eye"}, at most`, text: below },
    ],
  };
}

function lock(): Primitive[] {
  return put(lockFromSide([0, 0], { toothed: "right", gap: 3.4 }), { at: [38, 12], deg: 180, flip: true });
}

/** Without a lock all cords come down through the last eye. */
function lastEye(): Primitive[] {
  return [
    shape("board", [
      [14, -2],
      [62, -2],
      [62, 4],
      [14, 4],
    ]),
    stroke("dividerWire", [
      [38, 4],
      [38, 7],
    ]),
    stroke("dividerWire", arc([38, 12], [5, 5.4], 0, 360, 32)),
  ];
}

function tail(i: number, count: number): Primitive {
  const share = count === 1 ? 0.5 : i / (count - 1);
  const top = 35 + share * 6;
  return stroke(
    "cord",
    smooth([
      [top, 12],
      [top + (share - 0.5) * 10, 26],
      [38 + (share - 0.5) * 6, 36],
      [38 + (share - 0.5) * 5, 46],
    ]),
    { cord: i + 1 },
  );
}

function connector(): Primitive[] {
  return [
    stroke("cord", [
      [38, 58],
      [38, 82],
    ]),
    shape(
      "tool",
      smooth(
        [
          [33, 44],
          [43, 44],
          [44, 50],
          [42, 52.4],
          [34, 52.4],
          [32, 50],
        ],
        true,
        4,
      ),
    ),
    shape(
      "tool",
      smooth(
        [
          [34.4, 54],
          [41.6, 54],
          [40.4, 61],
          [35.6, 61],
        ],
        true,
        4,
      ),
    ),
    stroke("motion", [
      [29, 53.2],
      [32, 53.2],
    ]),
    stroke("motion", [
      [44, 53.2],
      [47, 53.2],
    ]),
  ];
}
