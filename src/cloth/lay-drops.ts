import type { Lay, Panel } from "../shade-plan/index.ts";
import { remainderMm } from "../units/index.ts";

/** Where the panels of one layer lie along the bolt, mm from its beginning. */
export interface DropsOnBolt {
  lays: Lay[];
  /** Cloth before the first piece, and to the end of the last, mm. */
  startMm: number;
  lengthMm: number;
}

/** A panel with its place across the bolt and, on a patterned cloth, where in the repeat its upper edge must lie. */
export interface Drop {
  panel: Panel;
  boltXMm: number;
  startMm: number;
  /** Panels of one number lie beside each other. */
  drop: number;
}

interface Bolt {
  /** Repeat along the bolt, mm; absent on plain cloth. */
  repeatMm?: number;
}

/**
 * Lays the panels of one layer on the bolt, drop after drop, from a bolt that begins with a whole repeat.
 *
 * Each drop begins at the next place of the repeat that is its own; drops of one place follow each other, then those
 * half a repeat on (“cut odd-numbered widths, shift R/2, cut even”), whichever order takes less cloth.
 */
export function layDrops(drops: readonly Drop[], bolt: Bolt): DropsOnBolt {
  const middle = (drops.length - 1) / 2;
  const away = (index: number) => Math.abs(index - middle);
  const own = drops[Math.floor(middle)]?.startMm ?? 0;
  const indices = drops.map((_, index) => index);
  const order = (first: boolean) =>
    [...indices].sort(
      (a, b) =>
        Number(isFirst(drops[b], own) === first) - Number(isFirst(drops[a], own) === first) ||
        away(a) - away(b) ||
        a - b,
    );
  const [as, other] = [layInOrder(drops, order(true), bolt), layInOrder(drops, order(false), bolt)];
  return other.lengthMm < as.lengthMm - 1e-6 ? other : as;
}

function isFirst(drop: Drop | undefined, ownMm: number): boolean {
  return Math.abs((drop?.startMm ?? 0) - ownMm) < 1e-6;
}

function layInOrder(drops: readonly Drop[], order: readonly number[], bolt: Bolt): DropsOnBolt {
  const lays: Lay[] = [];
  let endMm = 0;
  const begunAtMm = new Map<number, number>();
  for (const index of order) {
    const drop = drops[index];
    if (drop === undefined) continue;
    const { panel } = drop;
    const yMm = begunAtMm.get(drop.drop) ?? nextStart(endMm, drop.startMm, bolt.repeatMm);
    lays.push({
      panelId: panel.id,
      xMm: drop.boltXMm,
      yMm,
      widthMm: panel.widthMm,
      lengthMm: panel.lengthMm,
    });
    begunAtMm.set(drop.drop, yMm);
    endMm = Math.max(endMm, yMm + panel.lengthMm);
  }
  return { lays, startMm: Math.min(...lays.map((lay) => lay.yMm)), lengthMm: endMm };
}

/** The first place at or after `fromMm` that lies `startMm` below a repeat. */
function nextStart(fromMm: number, startMm: number, repeatMm: number | undefined): number {
  return repeatMm === undefined ? fromMm : fromMm + remainderMm(startMm - fromMm, repeatMm);
}
