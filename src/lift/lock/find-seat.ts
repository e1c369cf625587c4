import { markMm, type Ruler, SAME_LENGTH_MM } from "../../units/index.ts";
import { type BoardLine, type Gap, gapAround, gapsToTry, hasRoom, shortOfMm } from "../gaps.ts";
import { pullCurve } from "./pull-curve.ts";
import { type RigLayout, type RigThreading, threadRig } from "./rig-threading.ts";

export interface SeatWish {
  kind: "auto" | "between" | "outside";
  /** A place that the maker fixed, mm from the control side. */
  fixedMm?: number;
  ruler: Ruler;
}

export interface FoundSeat {
  gap: Gap;
  /** Centre of the housing, mm from the control side. */
  lockMm: number;
  threading: RigThreading;
  /** Gaps that were looked at; those without room too. */
  tried: Gap[];
  forced: boolean;
}

/** How much better one place must be than another to be told apart from rounding. */
const TELL_APART = 1 + 1e-9;

/**
 * Seat of the lock: of all places that keep clear of eyes and board ends, on a mark of the ruler, the one with
 * the least pull at the hand. Without any, the place that misses by least, marked as forced.
 */
export function findSeat(line: BoardLine, layout: RigLayout, wish: SeatWish): FoundSeat {
  const tried = gapsToTry(line, wish.fixedMm === undefined ? wish.kind : "auto");
  if (wish.fixedMm !== undefined) return fixedSeat(line, layout, wish.fixedMm, tried);
  let best: FoundSeat | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const gap of tried) {
    if (!hasRoom(gap)) continue;
    const threading = threadRig(layout, gap.outer);
    const pull = pullCurve(layout, threading);
    const lockMm = leastPull(pull, gap, markMm(wish.ruler));
    const pullN = pull(lockMm);
    if (best === undefined || pullN * TELL_APART < least) {
      best = { gap, lockMm, threading, tried, forced: false };
      least = pullN;
    }
  }
  return best ?? forcedSeat(line, layout, tried);
}

function fixedSeat(line: BoardLine, layout: RigLayout, wishedMm: number, tried: Gap[]): FoundSeat {
  const lockMm = Math.min(Math.max(wishedMm, line.boardFromMm), Math.max(line.boardFromMm, line.boardToMm));
  const gap = gapAround(line, lockMm);
  const clear = wishedMm >= gap.fromMm - SAME_LENGTH_MM && wishedMm <= gap.toMm + SAME_LENGTH_MM;
  return { gap, lockMm, threading: threadRig(layout, gap.outer), tried, forced: !clear };
}

function forcedSeat(line: BoardLine, layout: RigLayout, tried: Gap[]): FoundSeat {
  const nearest = tried.reduce((a, b) => (shortOfMm(b) < shortOfMm(a) ? b : a));
  const seat = fixedSeat(line, layout, (nearest.fromMm + nearest.toMm) / 2, tried);
  return { ...seat, forced: true };
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
