import type { Cord, CordLock } from "../../job/index.ts";
import type { FitCell, FitRow } from "../../shade-plan/index.ts";
import { type CordHolder, type FitHarm, lockRoom, misfits } from "./lock-fit.ts";

/** Harms that decide the word, the one that no test can lift before those that leave it open. */
const GRAVEST: readonly FitHarm[] = ["jams", "too-thick", "too-many", "not-known"];

/** Every lock with so many cords of each diameter. */
export function fitMatrix(
  locks: readonly CordLock[],
  cords: readonly Cord[],
  cordCount: number,
  holder?: CordHolder,
): FitRow[] {
  return locks.map((lock) => ({
    lock: { id: lock.id, name: lock.name },
    cells: cords.map((cord) => fitCell(lock, cord, cordCount, holder)),
  }));
}

export function fitCell(lock: CordLock, cord: Cord, cordCount: number, holder?: CordHolder): FitCell {
  const against = misfits(lock, cord, cordCount, holder);
  const harm = GRAVEST.find((one) => against.some((misfit) => misfit.harm === one));
  const wiresUnknown = lock.unmeasured?.includes("dividerWires") === true;
  return {
    lockId: lock.id,
    cordId: cord.id,
    verdict: harm ?? (wiresUnknown ? "not-known" : lockRoom(lock, cord).innerOnly ? "inner-slots" : "fits"),
    reasons: [
      ...against.map(({ reason }) => reason),
      ...(wiresUnknown ? ["has wires or slots that nobody counted"] : []),
    ],
  };
}
