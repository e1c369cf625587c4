import { SAME_LENGTH_MM } from "../units/index.ts";

export interface Filled {
  /** New stock lengths to buy. */
  bought: number;
  /** Length cut from what is at hand, and how many of its pieces were cut into, mm. */
  fromRackMm: number;
  rackPiecesUsed: number;
  /** Cuts that found no place: no new length was offered, or none is long enough, mm. */
  leftMm: number[];
  /** What remains of each piece of the rack, in the order given, mm. */
  rackLeftMm: number[];
}

/**
 * Places cuts in the pieces of the rack and then in new stock lengths: first-fit decreasing,
 * short remnants first. Good enough to buy by; the fewest lengths are the cutting plan's business.
 */
export function fillLengths(
  cutsMm: readonly number[],
  rackMm: readonly number[],
  newMm: number | undefined,
  kerfMm: number,
): Filled {
  const order = rackMm.map((_, index) => index).sort((a, b) => (rackMm[a] ?? 0) - (rackMm[b] ?? 0));
  /** A saw line follows every cut but the last, so each piece has room for one line more. */
  const roomMm = order.map((index) => (rackMm[index] ?? 0) + kerfMm);
  const used = new Set<number>();
  const leftMm: number[] = [];
  let fromRackMm = 0;
  let from = 0;
  let previousMm = Number.NaN;
  for (const cutMm of [...cutsMm].sort((a, b) => b - a)) {
    // Of equal cuts none can fit where the one before did not.
    if (cutMm !== previousMm) from = 0;
    previousMm = cutMm;
    const takesMm = cutMm + kerfMm;
    while (from < roomMm.length && (roomMm[from] ?? 0) + SAME_LENGTH_MM < takesMm) from++;
    if (from === roomMm.length) {
      if (newMm === undefined || newMm + SAME_LENGTH_MM < cutMm) {
        leftMm.push(cutMm);
        continue;
      }
      roomMm.push(newMm + kerfMm);
    }
    roomMm[from] = (roomMm[from] ?? 0) - takesMm;
    if (from < order.length) {
      fromRackMm += cutMm;
      used.add(from);
    }
  }
  const rackLeftMm = [...rackMm];
  order.forEach((index, place) => {
    if (used.has(place)) rackLeftMm[index] = Math.max(0, (roomMm[place] ?? 0) - kerfMm);
  });
  return { bought: roomMm.length - order.length, fromRackMm, rackPiecesUsed: used.size, leftMm, rackLeftMm };
}
