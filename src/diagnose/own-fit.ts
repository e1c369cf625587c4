import { type Cord, locksToChoose, type PartsAtHand } from "../job/index.ts";
import { type FitRow, fitMatrix } from "../lift/index.ts";

/** Which lock goes with which cord, for so many cords. */
export interface OwnFit {
  cordCount: number;
  cords: Cord[];
  rows: FitRow[];
}

/**
 * Locks by cords: the maker's own where there are any, else those of the catalogue; the cord of the shade at hand is
 * always among them.
 */
export function ownFit(
  { locks, cords }: Pick<PartsAtHand, "locks" | "cords">,
  cordCount: number,
  shadeCordId?: string,
): OwnFit {
  const own = cords.filter(({ demo }) => demo !== true);
  const listed =
    own.length === 0 ? cords : cords.filter((cord) => own.includes(cord) || cord.id === shadeCordId);
  return { cordCount, cords: listed, rows: fitMatrix(locksToChoose(locks), listed, cordCount) };
}
