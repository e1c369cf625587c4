import type { CordLock } from "../../job/index.ts";
import type { LiftPartsShade } from "../lift-parts-input.ts";
import { lockRoom, type Misfit, misfits } from "./lock-fit.ts";

export interface LockChoice {
  lock: CordLock;
  /** Locks earlier in the list that do not take the cords, each with why. */
  refused: { lock: CordLock; reason: string }[];
  /** Nothing in the list takes the cords, or the maker's own lock does not: this one is drawn all the same. */
  forced: boolean;
}

/**
 * The maker's lock where one is set, else the first that takes so many cords of this cord's diameter;
 * where none does, the one that misses by least.
 *
 * @throws where there are no locks to choose from: a bug
 */
export function chooseLock(
  shade: Pick<LiftPartsShade, "lock" | "locks" | "cord">,
  cordCount: number,
): LockChoice {
  const { cord, lock: own } = shade;
  if (own)
    return { lock: own, refused: [], forced: among(misfits(own, cord, cordCount), REFUSES).length > 0 };
  const judged = shade.locks.map((lock) => ({ lock, against: misfits(lock, cord, cordCount) }));
  const at = firstWithout(judged, TO_MEND) ?? firstWithout(judged, REFUSES);
  if (at !== undefined) {
    const refused = judged.slice(0, at).map(({ lock, against }) => ({ lock, reason: reasonText(against) }));
    return { lock: pick(judged, at), refused, forced: false };
  }
  const nearest = nearestIndex(shade, cordCount);
  const refused = judged
    .filter((_, i) => i !== nearest)
    .map(({ lock, against }) => ({ lock, reason: reasonText(against) }));
  return { lock: pick(judged, nearest), refused, forced: true };
}

type Judged = { lock: CordLock; against: Misfit[] };

/** What refuses a lock, and what is to be mended as well. */
const REFUSES: readonly Misfit["severity"][] = ["stop"];
const TO_MEND: readonly Misfit["severity"][] = ["stop", "fix"];

function among(against: Misfit[], severities: readonly Misfit["severity"][]): Misfit[] {
  return against.filter(({ severity }) => severities.includes(severity));
}

function firstWithout(judged: Judged[], severities: readonly Misfit["severity"][]): number | undefined {
  const at = judged.findIndex(({ against }) => among(against, severities).length === 0);
  return at < 0 ? undefined : at;
}

function reasonText(against: Misfit[]): string {
  return among(against, TO_MEND)
    .map(({ reason }) => reason)
    .join("; it ");
}

function pick(judged: Judged[], at: number): CordLock {
  const found = judged[at];
  if (found === undefined) throw new Error(`invalid locks: none at ${at}`);
  return found.lock;
}

/** The lock that misses by least: by the share of cords that it cannot take and of the diameter that is off. */
function nearestIndex({ locks, cord }: Pick<LiftPartsShade, "locks" | "cord">, cordCount: number): number {
  let best = 0;
  let least = Number.POSITIVE_INFINITY;
  locks.forEach((lock, i) => {
    const { cordsMax } = lockRoom(lock, cord);
    const d = cord.diameterMm;
    const low = lock.cordMinMm ?? lock.cordNominalMm ?? d;
    const high = lock.cordMaxMm ?? lock.cordNominalMm ?? d;
    const over = Math.max(0, cordCount - cordsMax) / cordCount;
    const off = Math.max(0, low - d, d - high) / d;
    if (over + off < least) {
      least = over + off;
      best = i;
    }
  });
  return best;
}
