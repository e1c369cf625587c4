import { FIT_SLACK } from "../units/index.ts";

/** Panels of one layer from the left, widths as cut, mm. */
export interface Joined {
  panels: { widthMm: number; full: boolean; joinedXMm: number }[];
  /** Drops that come off the bolt; two narrow side panels may share one. */
  drops: number;
  sidesShareDrop: boolean;
}

/** More panels than any shade has; beyond it the layer is cut as if it fitted, with a finding. */
const MOST_SIDE_WIDTHS = 40;

/**
 * Panels for a layer that must measure `cutWidthMm` when joined: one full width in the middle and equal
 * parts at each side, never a seam in the centre (US sewing handbook; “Measuring pelmets and blinds”).
 *
 * Each seam costs `seamMm` on both pieces. The two outermost parts come off one drop where they fit
 * side by side.
 */
export function joinWidths(cutWidthMm: number, usableWidthMm: number, seamMm: number): Joined {
  if (cutWidthMm <= usableWidthMm + FIT_SLACK) {
    return {
      panels: [{ widthMm: cutWidthMm, full: false, joinedXMm: 0 }],
      drops: 1,
      sidesShareDrop: false,
    };
  }
  const gainMm = usableWidthMm - 2 * seamMm;
  const eachSideMm = (cutWidthMm - usableWidthMm) / 2;
  const fullPerSide = Math.min(MOST_SIDE_WIDTHS, Math.ceil(eachSideMm / gainMm - FIT_SLACK) - 1);
  const partMm = eachSideMm - fullPerSide * gainMm + 2 * seamMm;
  const sidesShareDrop = 2 * partMm <= usableWidthMm + FIT_SLACK;

  const widths = [partMm, ...Array.from({ length: 2 * fullPerSide + 1 }, () => usableWidthMm), partMm];
  let joinedXMm = 0;
  const panels = widths.map((widthMm, i) => {
    const panel = { widthMm, full: i > 0 && i < widths.length - 1, joinedXMm };
    joinedXMm += widthMm - 2 * seamMm;
    return panel;
  });
  return { panels, drops: 2 * fullPerSide + 1 + (sidesShareDrop ? 1 : 2), sidesShareDrop };
}

/** Widest seam that still leaves something of a width, mm. */
export function seamThatFitsMm(seamMm: number, usableWidthMm: number): number {
  return Math.min(seamMm, usableWidthMm / 8);
}
