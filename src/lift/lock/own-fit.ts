import { locksToChoose, type PartsAtHand } from "../../job/index.ts";
import type { OwnFit } from "../../shade-plan/index.ts";
import { fitMatrix } from "./fit-matrix.ts";

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
  const judged =
    own.length === 0 ? cords : cords.filter((cord) => own.includes(cord) || cord.id === shadeCordId);
  // Without a shade it is the maker who has the cords.
  const holder = shadeCordId === undefined ? "you have" : "this shade has";
  return {
    cordCount,
    cords: judged.map(({ id, name, diameterMm }) => ({ id, name, diameterMm })),
    rows: fitMatrix(locksToChoose(locks), judged, cordCount, holder),
  };
}
