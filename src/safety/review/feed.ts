import { capstanRatio } from "../../mechanics/index.ts";
import type { RearCords, RearSpan } from "./cord-geometry.ts";

/** Cord between the guides of one span with the bottom row risen by `liftMm`, mm. */
export function spanCordMm({ cordMm, gathersMm, startsMm }: RearSpan, liftMm: number): number {
  return cordMm - Math.min(Math.max(liftMm - startsMm, 0), gathersMm);
}

/** Lower guide below the top line at that rise, mm: it stays until all below it is gathered. */
export function lowerGuideMm({ lowerBelowTopMm, startsMm }: RearSpan, liftMm: number): number {
  return lowerBelowTopMm - Math.max(0, liftMm - startsMm);
}

/** Can cord be drawn out anywhere by this pull, shade lowered: between open guides, or along the board? */
export function canFeed(rear: RearCords, pullN: number, travelMm: number): boolean {
  if (rear.guide !== "open" && rear.boardSpansMm.length === 0) return false;
  return risesToMm(rear, pullN, travelMm) > 0 || (rear.guide === "open" && paysOut(rear, pullN));
}

/**
 * How far up the shade can be made to rise by a pull along one cord, mm of travel: the load grows as folds
 * gather, and the cord turns by `wrapBelowRad` in the rings below, T_out = T_in e^(μθ).
 */
export function risesToMm(rear: RearCords, pullN: number, travelMm: number): number {
  const perHeld = rear.leastShare * capstanRatio(rear.friction, rear.wrapBelowRad);
  for (let i = 0; i < rear.spans.length; i++) {
    if ((rear.heldN[i] ?? 0) * perHeld >= pullN) return Math.min(travelMm, rear.spans[i]?.startsMm ?? 0);
  }
  return travelMm;
}

/** A spool whose spring balances the load pays out once the pull beats that load and the turns above. */
function paysOut(rear: RearCords, pullN: number): boolean {
  const { top, friction } = rear;
  return !top.holds && loadAt(rear, 0) * capstanRatio(friction, top.wrapRad) < pullN;
}

/**
 * Cord that a pull in the worst direction draws out into one span, mm, at a rise of `liftMm`: what the shade
 * can still rise by, what a spool pays out, and otherwise the little by which a taut cord is bent sideways.
 */
export function drawnMm(
  rear: RearCords,
  span: RearSpan,
  pullN: number,
  liftMm: number,
  travelMm: number,
): number {
  if (rear.guide !== "open") return 0;
  const loadN = loadAt(rear, liftMm);
  const spoolMm =
    !rear.top.holds && loadN * capstanRatio(rear.friction, rear.top.wrapRad) < pullN ? liftMm : 0;
  const slidesMm = spoolMm + stillRisesMm(rear, pullN, liftMm, travelMm);
  return slidesMm > 0 ? slidesMm : bentMm(spanCordMm(span, liftMm), pullN, loadN);
}

/** The same between two eyes on the board, where no ring grips the cord and no tape hides it. */
export function drawnAtBoardMm(
  rear: RearCords,
  spanMm: number,
  pullN: number,
  liftMm: number,
  travelMm: number,
): number {
  const slidesMm = stillRisesMm(rear, pullN, liftMm, travelMm);
  return slidesMm > 0 ? slidesMm : bentMm(spanMm, pullN, loadAt(rear, liftMm));
}

function stillRisesMm(rear: RearCords, pullN: number, liftMm: number, travelMm: number): number {
  return Math.max(0, risesToMm(rear, pullN, travelMm) - liftMm);
}

/** Load of the least loaded cord at that rise, N. */
function loadAt({ spans, heldN, leastShare }: RearCords, liftMm: number): number {
  let at = 0;
  while (at + 1 < spans.length && (spans[at + 1]?.startsMm ?? 0) <= liftMm) at++;
  return (heldN[at] ?? 0) * leastShare;
}

/**
 * A cord under tension T that gives no further is pulled sideways in the middle by F into two legs at the
 * angle ε, F = 2 T sin ε, and is longer by s (1 / cos ε − 1). Only asked where T ≥ F, so that ε ≤ 30°.
 */
function bentMm(spanMm: number, pullN: number, tensionN: number): number {
  const sine = Math.min(0.5, pullN / (2 * Math.max(tensionN, pullN)));
  return spanMm * (1 / Math.sqrt(1 - sine * sine) - 1);
}
