import { type Ruler, toMark } from "../../units/index.ts";
import type { FollowedCut } from "./follow-cuts.ts";

/** What a cutter reads off the ruler at one cut, mm, each on a mark of it: the two add up to the whole. */
export interface CheckSum {
  /** From the edge or end before the cutter. */
  markMm: number;
  beyondMm: number;
  wholeMm: number;
}

/**
 * The check sums of a ticket by the numbers of its cuts. Cuts are made on marks of the ruler, so what lies beyond one is
 * the whole less its mark, and as much is there when it is cut again: sizes that are rounded one by one would not add up.
 *
 * @param leftHanded has the right selvedge before him
 */
export function checkSums(
  cuts: readonly FollowedCut[],
  leftHanded: boolean,
  ruler: Ruler,
): ReadonlyMap<number, CheckSum> {
  const read = new Map<number, { widthMm: number; lengthMm: number }>();
  const sums = new Map<number, CheckSum>();
  for (const { cut, sheet, markMm: fromStartMm, beyondMm: toEndMm } of cuts) {
    const isAcross = cut.direction === "across";
    const side = isAcross ? "lengthMm" : "widthMm";
    const isTurned = leftHanded && !isAcross;
    const whole = read.get(cut.sheet) ?? {
      widthMm: toMark(sheet.widthMm, ruler),
      lengthMm: toMark(sheet.lengthMm, ruler),
    };
    const markMm = toMark(isTurned ? toEndMm : fromStartMm, ruler);
    // Where many rounded marks have used up the cloth, it is measured anew.
    const wholeMm = whole[side] > markMm ? whole[side] : toMark(fromStartMm + toEndMm, ruler);
    const beyondMm = Math.max(0, wholeMm - markMm);
    sums.set(cut.number, { markMm, beyondMm, wholeMm });
    const [near, far] = isTurned ? [cut.second, cut.first] : [cut.first, cut.second];
    read.set(near, { ...whole, [side]: markMm });
    read.set(far, { ...whole, [side]: beyondMm });
  }
  return sums;
}
