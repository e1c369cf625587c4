import { type FigureInput, figureRule } from "../figures/index.ts";
import { type Cite, cite } from "../sources/index.ts";

/** The top line above the floor, and what that rests on. */
export const TOP_ABOVE_FLOOR = [
  "mm",
  "top line above the floor",
  "opening/sillAboveFloorMm",
  "figure:measure.finished-length",
  "opening/heightsMm",
] as const satisfies FigureInput<unknown>;

/** What a maker sets, or which lift it is, decides the tail. */
export const TAIL_RESTS_ON = ["lift/tailMm", "lift/kind"] as const;

/**
 * A tail that ends half way down the window, mm.
 *
 * @param below what the cords hang down from, as `the lock`
 */
export function halfTail(below: string, source: Cite) {
  return figureRule({
    id: "rig.tail",
    label: `Tail below ${below}, shade lowered`,
    symbol: "t",
    unit: "mm",
    formula: "L / 2",
    inputs: { L: ["mm", "finished length", "figure:measure.finished-length"] },
    restsOn: TAIL_RESTS_ON,
    cite: source,
    compute: ({ L }) => L / 2,
  });
}

/** What hangs down with the shade raised, mm: the tail and what the shade gives up. */
export function raisedTail(below: string) {
  return figureRule({
    id: "rig.tail-raised",
    label: `Tail below ${below}, shade raised`,
    symbol: "u",
    unit: "mm",
    formula: "t + v",
    inputs: {
      t: ["mm", "tail lowered", "lift/tailMm", "figure:rig.tail"],
      v: ["mm", "travel of the bottom row", "figure:shape.travel"],
    },
    cite: cite("geometry", `what the shade gives up hangs below ${below}`),
    compute: ({ t, v }) => t + v,
  });
}
