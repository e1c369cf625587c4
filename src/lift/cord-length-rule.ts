import { type FigureInput, figureRuleOf } from "../figures/index.ts";
import { cite } from "../sources/index.ts";
import { cordLength } from "./cord-lengths.ts";

/** Which cord a figure is of, by its number. */
export interface OfCord {
  cord: number;
}

/** What every cord of a lift has, and what that rests on. */
export const CORD_INPUTS = {
  y: [
    "mm",
    "bottom row to the board above it",
    "figure:measure.finished-length",
    "opening/head",
    "figure:shape.*",
  ],
  k: ["mm", "knots and threading", "lift/knotsMm"],
} as const satisfies Record<string, FigureInput<OfCord>>;

/** Id, label, symbol and unit of a cord's length. */
export const CORD_LENGTH = {
  id: ({ cord }: OfCord) => `rig.cord-${cord}-length`,
  label: ({ cord }: OfCord) => `Cord ${cord}: length`,
  symbol: ({ cord }: OfCord) => `c${cord}`,
  unit: "mm",
} as const;

/**
 * The length of a cord that runs along the board and hangs down at the hand, mm.
 *
 * @param turnsDown where it turns down to the hand, from the left edge along the board, and what that rests on
 */
export function cordAlongBoard(turnsDown: FigureInput<OfCord>) {
  return figureRuleOf<OfCord>()({
    ...CORD_LENGTH,
    formula: "y + abs(X − x) + t + k",
    inputs: {
      y: CORD_INPUTS.y,
      X: turnsDown,
      x: ["mm", "column, along the board from the left edge", "columns/edgeInsetMm", "figure:shape.columns"],
      t: ["mm", "tail, shade lowered", "lift/tailMm", "figure:rig.tail"],
      k: CORD_INPUTS.k,
    },
    cite: cite("geometry", "rise, run, tail and knots"),
    note: "the rise is taken to the top line: the board’s thickness stays as spare",
    compute: ({ y = 0, X = 0, x = 0, t = 0, k = 0 }) => cordLength(y, x, X, t, k),
  });
}
