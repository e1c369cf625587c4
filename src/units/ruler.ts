import { MM_PER_INCH } from "./length.ts";
import { TIE_SLACK } from "./tolerances.ts";

/** The finest mark on the ruler that the maker works with. */
export const RULERS = ["1/16 in", "1/8 in", "1 mm"] as const;
export type Ruler = (typeof RULERS)[number];

const MARK_MM: Record<Ruler, number> = {
  "1/16 in": MM_PER_INCH / 16,
  "1/8 in": MM_PER_INCH / 8,
  "1 mm": 1,
};

/** Distance between two neighbouring marks, mm. */
export function markMm(ruler: Ruler): number {
  return MARK_MM[ruler];
}

/**
 * The nearest mark, as a whole number of marks.
 * Round an absolute position, never a difference: then no error accumulates along a shade.
 */
export function nearestMark(positionMm: number, ruler: Ruler): number {
  return Math.round(positionMm / markMm(ruler) + TIE_SLACK);
}

/** The position of the nearest mark, mm. */
export function toMark(positionMm: number, ruler: Ruler): number {
  return nearestMark(positionMm, ruler) * markMm(ruler);
}

/** The mark at or below, mm: for a finished width that must still enter its opening. */
export function downToMark(positionMm: number, ruler: Ruler): number {
  return Math.floor(positionMm / markMm(ruler) + 1e-6) * markMm(ruler);
}

/** The mark at or above, mm: for cloth and cord, which must never come out short. */
export function upToMark(positionMm: number, ruler: Ruler): number {
  return Math.ceil(positionMm / markMm(ruler) - 1e-6) * markMm(ruler);
}
