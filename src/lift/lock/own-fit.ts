import { locksToChoose, type PartsAtHand } from "../../job/index.ts";
import type { FitCell, OwnFit } from "../../shade-plan/index.ts";
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
  const rows = fitMatrix(locksToChoose(locks), judged, cordCount);
  return {
    cordCount,
    cords: judged.map(({ id, name, diameterMm }) => ({ id, name, diameterMm })),
    rows: rows.map((row) => ({
      ...row,
      cells: row.cells.map((cell) => (shadeCordId === undefined ? asked(cell) : cell)),
    })),
  };
}

/** Without a shade it is the maker who has the cords. */
function asked(cell: FitCell): FitCell {
  return { ...cell, reasons: cell.reasons.map((reason) => reason.replace("this shade has", "you have")) };
}
