import { continuousBeam } from "../../mechanics/index.ts";
import {
  type Grid,
  type Mass,
  massByCarrier,
  type Size,
  type Stretch,
  slantMm,
} from "../../shade-plan/index.ts";
import { GRAVITY } from "../../units/index.ts";
import type { RearSpan } from "./cord-geometry.ts";

/**
 * Stretches of cord between the guides of one column, shade lowered, from the bottom row up. Whole stretches
 * gather from the bottom, and the last, from the top ring to the board or its spool, by what is left of the travel.
 */
export function rearSpans(grid: Grid, endBelowTopMm: number, stretches: readonly Stretch[] = []): RearSpan[] {
  const rows = [...grid.rows].sort((a, b) => a.number - b.number);
  const spans: RearSpan[] = [];
  let startsMm = 0;
  rows.forEach((row, i) => {
    const above = rows[i + 1];
    // Rows that slant are further apart at one end: that end counts.
    const asideMm =
      above === undefined ? slantMm(row) : Math.abs((row.ends?.fallMm ?? 0) - (above.ends?.fallMm ?? 0)) / 2;
    const cordMm = Math.max(0, row.yMm - (above?.yMm ?? endBelowTopMm) + asideMm);
    const gathersMm = above === undefined ? Math.min(cordMm, Math.max(0, grid.travelMm - startsMm)) : cordMm;
    spans.push({
      cordMm,
      clothMm: cordMm + slackMm(stretches, row.number),
      gathersMm,
      startsMm,
      lowerBelowTopMm: row.yMm + slantMm(row),
      top: above === undefined,
    });
    startsMm += gathersMm;
  });
  return spans;
}

/** Cloth above a row that hangs besides what lies along the cord, mm. */
function slackMm(stretches: readonly Stretch[], row: number): number {
  const stretch = stretches.find((one) => one.row === row);
  if (stretch === undefined) return 0;
  return Math.max(0, stretch.clothMm - (stretch.sewnMm ?? 0) - stretch.cordMm);
}

/**
 * Weight on all cords while each stretch gathers, N: bar, the rows lifted so far with their ribs and rings,
 * the cloth below and half of the cloth on its way. The other half hangs from the ring above.
 */
export function heldWhileGathering(size: Size, grid: Grid, mass: Mass, spans: readonly RearSpan[]): number[] {
  const { clothKg, hemKg, barKg, rowsKg } = massByCarrier(mass);
  const lengthMm = Math.max(1, size.finishedLengthMm);
  let belowMm = grid.bottomSectionMm;
  return spans.map(({ cordMm }, i) => {
    const clothShare = Math.min(1, (belowMm + cordMm / 2) / lengthMm);
    belowMm += cordMm;
    return GRAVITY * (barKg + hemKg + (rowsKg * (i + 1)) / spans.length + clothKg * clothShare);
  });
}

/**
 * Share of the weight on the least loaded cord: the smaller of the reactions under a stiff bar and the strips
 * of limp cloth, since the lighter a cord is loaded, the easier the shade rises and feeds it.
 */
export function leastShare(columnsMm: readonly number[], widthMm: number): number {
  if (columnsMm.length < 2) return 1;
  const { reactionsN } = continuousBeam({
    supportsMm: columnsMm,
    fromMm: 0,
    toMm: widthMm,
    loadNPerMm: 1 / widthMm,
  });
  let least = 1;
  columnsMm.forEach((x, i) => {
    const from = i === 0 ? 0 : ((columnsMm[i - 1] ?? 0) + x) / 2;
    const to = i === columnsMm.length - 1 ? widthMm : (x + (columnsMm[i + 1] ?? widthMm)) / 2;
    least = Math.min(least, (to - from) / widthMm, reactionsN[i] ?? 0);
  });
  return Math.max(0, least);
}

/** Between neighbouring eyes along the board, the lock taken as one of them, mm. */
export function boardSpans(eyesMm: readonly number[], lockMm: number): number[] {
  const places = [...eyesMm, lockMm].sort((a, b) => a - b);
  return places.slice(1).map((place, i) => place - (places[i] ?? place));
}
