import type { Lay, Panel } from "../shade/index.ts";

export interface DropsOnBolt {
  lays: Lay[];
  lengthMm: number;
}

interface Bolt {
  usableWidthMm: number;
  cutLengthMm: number;
  /** Start of one drop to start of the next, mm. */
  pitchMm: number;
  /** Half the repeat where neighbours drop by half, else 0. */
  halfDropMm: number;
  sidesShareDrop: boolean;
}

/**
 * Lays the panels of one layer on the bolt, drop after drop.
 *
 * Panels at an even number of seams from the middle come first, then the bolt is moved on by half a
 * repeat and the odd ones follow (“cut odd-numbered widths, shift R/2, cut even”). Side parts lie at the
 * selvedge that meets their neighbour, so that the match runs through the seam.
 */
export function layDrops(panels: Panel[], bolt: Bolt): DropsOnBolt {
  const middle = (panels.length - 1) / 2;
  const seamsAway = (index: number) => Math.abs(index - middle);
  const order = panels
    .map((panel, index) => ({ panel, index, shifted: bolt.halfDropMm > 0 && seamsAway(index) % 2 === 1 }))
    .sort(
      (a, b) =>
        Number(a.shifted) - Number(b.shifted) || seamsAway(a.index) - seamsAway(b.index) || a.index - b.index,
    );

  const lays: Lay[] = [];
  let nextYMm = 0;
  let shiftDone = false;
  let sharedYMm: number | undefined;
  for (const { panel, index, shifted } of order) {
    if (shifted && !shiftDone) {
      nextYMm += bolt.halfDropMm;
      shiftDone = true;
    }
    const isSide = panels.length > 1 && (index === 0 || index === panels.length - 1);
    const shares = isSide && bolt.sidesShareDrop && sharedYMm !== undefined;
    const yMm = shares && sharedYMm !== undefined ? sharedYMm : nextYMm;
    lays.push({
      panelId: panel.id,
      xMm: lieAtMm(panel, index, panels.length, bolt),
      yMm,
      widthMm: panel.widthMm,
      lengthMm: panel.lengthMm,
    });
    if (isSide && bolt.sidesShareDrop) sharedYMm = yMm;
    if (!shares) nextYMm = yMm + bolt.pitchMm;
  }
  const lengthMm = Math.max(0, ...lays.map((lay) => lay.yMm + lay.lengthMm));
  return { lays, lengthMm };
}

function lieAtMm(panel: Panel, index: number, count: number, bolt: Bolt): number {
  if (count === 1) return bolt.pitchMm > bolt.cutLengthMm ? (bolt.usableWidthMm - panel.widthMm) / 2 : 0;
  // A left part takes the right-hand edge of its width: that edge meets the next panel.
  return index === 0 ? bolt.usableWidthMm - panel.widthMm : 0;
}
