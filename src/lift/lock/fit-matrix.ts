import type { Cord, CordLock } from "../../job/index.ts";
import { type FitHarm, lockRoom, misfits } from "./lock-fit.ts";

/** Whether so many cords go into a lock, in one word. */
export const FIT_VERDICTS = ["fits", "inner-slots", "jams", "too-thick", "too-many", "not-known"] as const;
export type FitVerdict = (typeof FIT_VERDICTS)[number];

export const FIT_WORDS: Record<FitVerdict, string> = {
  fits: "fits",
  "inner-slots": "fits in inner slots",
  jams: "jams",
  "too-thick": "too thick",
  "too-many": "too many",
  "not-known": "not known",
};

/** One lock with one cord. */
export interface FitCell {
  lockId: string;
  cordId: string;
  verdict: FitVerdict;
  /** What speaks against it or must be tested; each completes “The lock …”. */
  reasons: string[];
}

export interface FitRow {
  lock: CordLock;
  /** In the order of the cords. */
  cells: FitCell[];
}

/** Harms that decide the word, the one that no test can lift before those that leave it open. */
const GRAVEST: readonly FitHarm[] = ["jams", "too-thick", "too-many", "not-known"];

/** Every lock with so many cords of each diameter. */
export function fitMatrix(locks: readonly CordLock[], cords: readonly Cord[], cordCount: number): FitRow[] {
  return locks.map((lock) => ({ lock, cells: cords.map((cord) => fitCell(lock, cord, cordCount)) }));
}

export function fitCell(lock: CordLock, cord: Cord, cordCount: number): FitCell {
  const against = misfits(lock, cord, cordCount);
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
