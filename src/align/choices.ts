import type { LineAsk, RowLayout } from "../shade-plan/index.ts";
import { remainderMm, SUM_SLACK_MM } from "../units/index.ts";
import type { LineProblem, LineWindow } from "./line-problem.ts";

/** More rows than any shade has. */
const MOST_ROWS = 200;

/** Hem to first row at this spacing, as wanted, mm. */
export function wantedBottomMm({ bottom }: LineAsk, spacingMm: number): number {
  return bottom.kind === "half-fold" ? bottom.skirtMm + spacingMm / 2 : bottom.hemBarMm;
}

/** What hangs below the flat cloth when raised, mm. */
function hangingMm({ bottom }: LineAsk, bottomMm: number, spacingMm: number): number {
  return bottom.kind === "half-fold" ? bottomMm : bottom.ringStackMm + Math.max(spacingMm / 2, bottomMm);
}

/** One layout that a shade can take, and how far it hangs below its board for it. */
export interface Way {
  layout: RowLayout;
  /** Raised height at the least headrail and the wanted hem section, mm. */
  leastRaisedMm: number;
  /** What headrail and hem section gave together, mm. */
  gaveMm: number;
}

/**
 * Every way in which a shade can have rows at this spacing with its first row so far above the hem,
 * most rows first. Empty where it cannot.
 */
function placesAt(
  problem: LineProblem,
  ask: LineAsk,
  spacingMm: number,
  bottomOf: (rows: number) => number | undefined,
): Way[] {
  if (!spacingFits(problem, ask, spacingMm)) return [];
  const wantedMm = wantedBottomMm(ask, spacingMm);
  const leastRaisedMm = ask.leastHeadrailMm + hangingMm(ask, wantedMm, spacingMm);
  const mostRows = Math.floor((ask.lengthMm - ask.leastHeadrailMm - wantedMm) / spacingMm + SUM_SLACK_MM);
  const ways: Way[] = [];
  for (let rows = Math.min(MOST_ROWS, mostRows); rows >= 1; rows--) {
    const gaveMm = ask.lengthMm - ask.leastHeadrailMm - wantedMm - rows * spacingMm;
    // Fewer rows only hang lower.
    if (gaveMm > problem.mostLowerMm + SUM_SLACK_MM) break;
    if (ask.rows !== undefined && rows !== ask.rows) continue;
    if (rows * spacingMm < ask.leastGatheredMm - SUM_SLACK_MM) continue;
    const bottomMm = bottomOf(rows);
    if (bottomMm === undefined || bottomMm < wantedMm - SUM_SLACK_MM) continue;
    const headrailMm = ask.lengthMm - bottomMm - rows * spacingMm;
    if (headrailMm < ask.leastHeadrailMm - SUM_SLACK_MM) continue;
    const headrailExtraMm = Math.max(0, headrailMm - ask.leastHeadrailMm);
    const bottomExtraMm = Math.max(0, bottomMm - wantedMm);
    if (ask.headrailFixed && headrailExtraMm >= problem.markMm - SUM_SLACK_MM) continue;
    if (ask.bottomFixed && bottomExtraMm >= problem.markMm - SUM_SLACK_MM) continue;
    const raisedMm = headrailMm + hangingMm(ask, bottomMm, spacingMm);
    if (ask.stackMm !== undefined && raisedMm > ask.stackMm + SUM_SLACK_MM) continue;
    ways.push({
      layout: { spacingMm, rows, bottomMm, headrailMm, raisedMm, headrailExtraMm, bottomExtraMm },
      leastRaisedMm,
      gaveMm,
    });
  }
  return ways;
}

function spacingFits(problem: LineProblem, ask: LineAsk, spacingMm: number): boolean {
  if (spacingMm > ask.largestMm + SUM_SLACK_MM || spacingMm < ask.smallestMm - SUM_SLACK_MM) return false;
  return (
    ask.spacingMm === undefined || Math.abs(spacingMm - ask.spacingMm) < problem.markMm / 2 + SUM_SLACK_MM
  );
}

/** Ways onto the levels `levelMm` + whole spacings above the floor. */
export function placesOnLevels(
  problem: LineProblem,
  { topMm, ask }: LineWindow,
  spacingMm: number,
  levelMm: number,
): Way[] {
  if (topMm === undefined) return [];
  const wantedMm = wantedBottomMm(ask, spacingMm);
  const hemMm = topMm - ask.lengthMm;
  const bottomMm = wantedMm + remainderMm(levelMm - hemMm - wantedMm, spacingMm);
  return placesAt(problem, ask, spacingMm, () => bottomMm);
}

/** Ways to have the spacing alone, at levels of its own. */
export function placesAtSpacing(problem: LineProblem, { ask }: LineWindow, spacingMm: number): Way[] {
  const wantedMm = wantedBottomMm(ask, spacingMm);
  return placesAt(problem, ask, spacingMm, (rows) =>
    ask.headrailFixed ? ask.lengthMm - ask.leastHeadrailMm - rows * spacingMm : wantedMm,
  );
}
