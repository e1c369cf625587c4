import { markMm, type Ruler, SAME_LENGTH_MM } from "../../units/index.ts";
import { type BoardLine, type Gap, gapAround, gapsToTry, hasRoom, shortOfMm } from "../gaps.ts";
import { type RigLayout, rigPullN, type Strand, threadRig } from "./rig-threading.ts";

export interface SeatWish {
  kind: "auto" | "between" | "outside";
  /** A place that the maker fixed, mm from the control side. */
  fixedMm?: number;
  ruler: Ruler;
  /** Pulls above which a hand finds it hard, N, in rising order. */
  pullLimitsN: readonly number[];
  /** How a cord comes in too steeply for the lock to hold it and let it go: what keeps it level, and how far in at most. */
  hold?: {
    /** Least distance of the lock’s middle from the nearest eye, mm. */
    eyeApartMm: number;
    /** From the control side, mm. */
    farthestMm: number;
  };
}

export interface FoundSeat {
  gap: Gap;
  /** Centre of the housing, mm from the control side. */
  lockMm: number;
  threading: Strand[];
  /** Gaps that were looked at; those without room too. */
  tried: Gap[];
  forced: boolean;
  /**
   * As near to the control side as it clears what is there; further in for an easier pull, or so that the cords come in
   * level and the lock holds them; or where the maker set it.
   */
  chosenFor: "reach" | "pull" | "hold" | "maker";
}

/** How much better one place must be than another to be told apart from rounding. */
const TELL_APART = 1 + 1e-9;

/**
 * Seat of the lock, on a mark of the ruler and clear of eyes and board ends: just inside the last eye, as near to the
 * control side as it can be, where a hand reaches round the cloth; outside the eye where there is no room inside.
 * Only where that pull passes a limit which another place keeps does it go to the place of the least pull, and only where
 * its eyes are so near that a cord comes in too steeply does it go on to the first place that is farther from them.
 * Without any clear place it goes where it misses by least, marked as forced.
 */
export function findSeat(line: BoardLine, layout: RigLayout, wish: SeatWish): FoundSeat {
  const tried = gapsToTry(line, wish.fixedMm === undefined ? wish.kind : "auto");
  if (wish.fixedMm !== undefined) return fixedSeat(line, layout, wish.fixedMm, tried);
  const mark = markMm(wish.ruler);
  const clear = tried.filter(hasRoom).map((gap) => ({ gap, threading: threadRig(layout, gap.outer) }));
  const [nearest] = clear;
  if (nearest === undefined) return forcedSeat(line, layout, tried);
  const shared = { tried, forced: false };
  const reachMm = outermost(nearest.gap, mark);
  const reachN = rigPullN(layout, nearest.threading, reachMm);
  const passed = wish.pullLimitsN.filter((limitN) => reachN > limitN);
  if (passed.length > 0) {
    const eased = easiest(layout, clear, mark);
    if (eased !== undefined && passed.some((limitN) => eased.pullN <= limitN)) {
      return { ...shared, ...eased.place, lockMm: eased.lockMm, chosenFor: "pull" };
    }
  }
  const level = wish.hold && levelPlace(line, clear, reachMm, wish.hold, mark);
  if (level !== undefined) return { ...shared, ...level, chosenFor: "hold" };
  return { ...shared, ...nearest, lockMm: reachMm, chosenFor: "reach" };
}

/** The outermost place at which every eye is far enough, where the one in reach is too near to one. */
function levelPlace(
  { eyesMm }: BoardLine,
  clear: readonly Place[],
  reachMm: number,
  { eyeApartMm, farthestMm }: NonNullable<SeatWish["hold"]>,
  mark: number,
): (Place & { lockMm: number }) | undefined {
  if (eyesMm.every((eye) => Math.abs(eye - reachMm) >= eyeApartMm - SAME_LENGTH_MM)) return undefined;
  for (const place of clear) {
    const { gap } = place;
    const [before, after] = [eyesMm[gap.outer - 1], eyesMm[gap.outer]];
    const level: Gap = {
      ...gap,
      fromMm: Math.max(gap.fromMm, before === undefined ? gap.fromMm : before + eyeApartMm),
      toMm: Math.min(gap.toMm, farthestMm, after === undefined ? gap.toMm : after - eyeApartMm),
    };
    if (hasRoom(level)) return { ...place, lockMm: outermost(level, mark) };
  }
  return undefined;
}

interface Place {
  gap: Gap;
  threading: Strand[];
}

/** The first mark of a gap from the control side, or its end where it has none. */
function outermost({ fromMm, toMm }: Gap, mark: number): number {
  const first = Math.ceil((fromMm - SAME_LENGTH_MM) / mark) * mark;
  return first <= toMm + SAME_LENGTH_MM ? first : fromMm;
}

function easiest(
  layout: RigLayout,
  places: readonly Place[],
  mark: number,
): { place: Place; lockMm: number; pullN: number } | undefined {
  let best: { place: Place; lockMm: number; pullN: number } | undefined;
  for (const place of places) {
    const pull = (lockMm: number) => rigPullN(layout, place.threading, lockMm);
    const lockMm = leastPull(pull, place.gap, mark);
    const pullN = pull(lockMm);
    if (best === undefined || pullN * TELL_APART < best.pullN) best = { place, lockMm, pullN };
  }
  return best;
}

function fixedSeat(line: BoardLine, layout: RigLayout, wishedMm: number, tried: Gap[]): FoundSeat {
  const lockMm = Math.min(Math.max(wishedMm, line.boardFromMm), Math.max(line.boardFromMm, line.boardToMm));
  const gap = gapAround(line, lockMm);
  const clear = wishedMm >= gap.fromMm - SAME_LENGTH_MM && wishedMm <= gap.toMm + SAME_LENGTH_MM;
  return { gap, lockMm, threading: threadRig(layout, gap.outer), tried, forced: !clear, chosenFor: "maker" };
}

function forcedSeat(line: BoardLine, layout: RigLayout, tried: Gap[]): FoundSeat {
  const nearest = tried.reduce((a, b) => (shortOfMm(b) < shortOfMm(a) ? b : a));
  const seat = fixedSeat(line, layout, (nearest.fromMm + nearest.toMm) / 2, tried);
  return { ...seat, forced: true, chosenFor: "reach" };
}

/** On the marks of the ruler where the gap has any; the pull falls, then rises, so halving finds its lowest mark. */
function leastPull(pull: (lockMm: number) => number, { fromMm, toMm }: Gap, mark: number): number {
  let low = Math.ceil((fromMm - SAME_LENGTH_MM) / mark);
  let high = Math.floor((toMm + SAME_LENGTH_MM) / mark);
  if (low > high) return betweenMarks(pull, fromMm, toMm);
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (pull(middle * mark) <= pull((middle + 1) * mark) * TELL_APART) high = middle;
    else low = middle + 1;
  }
  return low * mark;
}

/** Ten places are enough on a stretch narrower than a mark. */
function betweenMarks(pull: (lockMm: number) => number, fromMm: number, toMm: number): number {
  let best = (fromMm + toMm) / 2;
  for (let i = 0; i <= 10 && toMm > fromMm; i++) {
    const place = fromMm + ((toMm - fromMm) * i) / 10;
    if (pull(place) * TELL_APART < pull(best)) best = place;
  }
  return best;
}
