import { trimmed } from "../../units/index.ts";
import { counted } from "../../words/index.ts";
import type { Primitive } from "../model.ts";
import { type ActionDrawing, type ActionInput, figureName, stacked } from "./action-input.ts";
import { arc, arrow, rope, shape, smooth, stroke } from "./kit.ts";

/** A spool on its tube: the cord comes up from its own column over the side nearer to the cloth and is wound on. */
export function drawWindSpool({ action }: ActionInput<"wind-spool">): ActionDrawing {
  const turns = trimmed(action.turns, 0);
  const shown = Math.min(8, Math.max(1, Math.round(action.turns)));
  const xs = Array.from({ length: shown }, (_, i) => 43 + i * 2.6);
  return {
    title: "Wind the cords on their spools",
    primitives: [
      shape("tube", [
        [4, 26],
        [94, 26],
        [94, 36],
        [4, 36],
      ]),
      shape("spool", [
        [40, 22],
        [66, 24],
        [66, 38],
        [40, 40],
      ]),
      shape("spool", [
        [38, 18],
        [41, 18],
        [41, 44],
        [38, 44],
      ]),
      shape("spool", [
        [65, 18],
        [68, 18],
        [68, 44],
        [65, 44],
      ]),
      ...xs.flatMap((x) =>
        rope(
          [
            [x, 41],
            [x + 0.7, 31],
            [x + 1.4, 21.4],
          ],
          2.2,
        ),
      ),
      ...rope(
        [
          [42, 66],
          [42, 54],
          [42.4, 41],
        ],
        2.2,
      ),
      shape("screw", arc([xs.at(-1) ?? 43, 31], 1.4, 0, 360, 12)),
      ...arrow(
        smooth([
          [80, 42],
          [86, 31],
          [80, 20],
        ]),
      ),
      ...arrow([
        [36, 64],
        [36, 52],
      ]),
      ...stacked([54, 54], [`${turns} ${turns === "1" ? "turn" : "turns"}`, "all the same way round"]),
      figureName([4, 10], counted(action.spools, "spool"), "start"),
      stroke("hidden", [
        [42, 66],
        [42, 70],
      ]),
    ] satisfies Primitive[],
    facts: [
      { label: "Spools", text: String(action.spools) },
      { label: "Turns that stay on each", text: turns },
    ],
  };
}
