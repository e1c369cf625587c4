import { cite, type Sourced, sourced } from "../sources/index.ts";
import { inches, type UnitSystem } from "../units/index.ts";

/** A measure of the hand that no plan decides: a round figure on either ruler. */
export type Habit = Record<UnitSystem, Sourced>;

function habit(imperialIn: number, metricMm: number, from: Sourced["cite"]): Habit {
  return { imperial: sourced(inches(imperialIn), "mm", from), metric: sourced(metricMm, "mm", from) };
}

/** Measures of the hand that stand in the steps beside the shade's own. */
export const PRACTICE = {
  /** Diagonals of a squared piece. */
  square: habit(1 / 8, 3, cite("our-choice", "what a chalk line and a tape can hold")),
  /** Hem against the level, and finished length at three points. */
  level: habit(1 / 8, 3, cite("our-choice", "what the eye sees from across a room")),
  catchDown: habit(4, 100, cite("common-practice", "a hand's breadth")),
  stripTurn: habit(0.5, 12, cite("common-practice")),
  liningEdge: habit(0.5, 12, cite("common-practice")),
  coverTurn: habit(0.5, 12, cite("common-practice")),
  connectorBelowLock: habit(3, 75, cite("lock-instructions", "within 3 in of the headrail, shade lowered")),
} as const satisfies Record<string, Habit>;
