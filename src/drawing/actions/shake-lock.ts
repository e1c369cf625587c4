import { counted } from "../../words/index.ts";
import type { Primitive } from "../model.ts";
import { callout } from "../sheets/shapes.ts";
import { type ActionDrawing, type ActionInput, figureName } from "./action-input.ts";
import { flatHand } from "./hands.ts";
import { arrow, put, smooth } from "./kit.ts";
import { lockFromSide } from "./lock-parts.ts";

/** The lock lies turned over on the hand and is shaken: its rollers fall apart. */
export function drawShakeLock({ action }: ActionInput<"shake-lock">): ActionDrawing {
  const toothed = action.facing;
  return {
    title: "Shake the lock open",
    primitives: [
      ...hand(),
      ...lockFromSide([50, 40], { toothed, gap: 5 }),
      ...shaking(),
      callout([50, 37], "light shows through", [0, -13], { yields: true }),
      callout([toothed === "right" ? 59 : 41, 36], "toothed", [toothed === "right" ? 8 : -8, -7], {
        yields: true,
      }),
      figureName([50, 78], action.slots > 1 ? counted(action.slots, "slot") : "one slot"),
    ],
    facts: [
      { label: "Slots", text: String(action.slots) },
      { label: "Toothed roller, once it hangs", text: `to the ${action.facing}` },
    ],
  };
}

function hand(): Primitive[] {
  return put(flatHand(), { at: [22, 53], size: 0.86, deg: 4 });
}

function shaking(): Primitive[] {
  return [
    ...arrow(
      smooth([
        [14, 30],
        [10, 38],
        [14, 46],
      ]),
    ),
    ...arrow(
      smooth([
        [8, 46],
        [4, 38],
        [8, 30],
      ]),
    ),
    ...arrow(
      smooth([
        [86, 46],
        [90, 38],
        [86, 30],
      ]),
    ),
    ...arrow(
      smooth([
        [92, 30],
        [96, 38],
        [92, 46],
      ]),
    ),
  ];
}
