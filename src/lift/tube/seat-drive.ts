import { LIFT_TRAITS } from "../../job/index.ts";
import { markMm, type Ruler, SAME_LENGTH_MM } from "../../units/index.ts";
import { type BoardLine, type Gap, gapAfter, hasRoom, shortOfMm } from "../gaps.ts";
import type { TubeKind } from "./tube-lift-parts.ts";

export interface SeatedDrive {
  /** Its middle, mm from the control side. */
  atMm: number;
  place: "outside" | "between" | "far";
  tried: Gap[];
  forced: boolean;
}

/**
 * Stretches in which a drive is looked for, the best first. One from which wand or loop hang sits at the control
 * end, or one bay further in. One that nobody touches may sit in any bay.
 */
export function driveGaps(line: BoardLine, kind: TubeKind): Gap[] {
  const last = line.eyesMm.length;
  const bays = LIFT_TRAITS[kind].hangs === "nothing" ? last + 1 : Math.min(2, last);
  return Array.from({ length: bays }, (_, outer) => gapAfter(line, outer));
}

/** At the control end where there is room, else in the middle of the nearest bay that has it, on a mark of the ruler. */
export function seatDrive(line: BoardLine, kind: TubeKind, ruler: Ruler): SeatedDrive {
  const tried = driveGaps(line, kind);
  const found = tried.find(hasRoom);
  // Bays alike but for rounding are alike, so that left and right choose the same one.
  const gap = found ?? tried.reduce((a, b) => (shortOfMm(b) < shortOfMm(a) - SAME_LENGTH_MM ? b : a));
  const place = gap.outer === 0 ? "outside" : gap.outer === line.eyesMm.length ? "far" : "between";
  if (found === undefined) return { atMm: (gap.fromMm + gap.toMm) / 2, place, tried, forced: true };
  const wish = place === "outside" ? gap.fromMm : place === "far" ? gap.toMm : (gap.fromMm + gap.toMm) / 2;
  return { atMm: nearestMarkIn(gap, wish, markMm(ruler)), place, tried, forced: false };
}

function nearestMarkIn({ fromMm, toMm }: Gap, wish: number, mark: number): number {
  const low = Math.ceil((fromMm - SAME_LENGTH_MM) / mark);
  const high = Math.floor((toMm + SAME_LENGTH_MM) / mark);
  if (low > high) return wish;
  return Math.min(Math.max(Math.round(wish / mark), low), high) * mark;
}
